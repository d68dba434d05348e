import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { type Checks, expectSame } from './checks.ts';
import { repository } from './package.ts';
import { until, type Workbench } from './workbench.ts';

interface CheckedStory {
  readonly readable: number;
  readonly findings: readonly { readonly line: number; readonly column: number; readonly message: string }[];
}

/** What the command line says of a story: the editor has to say the same. */
function checkedByCommandLine(place: string): CheckedStory {
  const command = spawnSync(
    process.execPath,
    [join(repository, 'server/dist/cli.js'), 'check', place, '--format', 'json'],
    { encoding: 'utf8' },
  );
  const story: CheckedStory | undefined = JSON.parse(command.stdout).stories[0];
  if (story === undefined) throw new Error(`The command line found no story at ${place}. ${command.stderr}`);
  return story;
}

/** The sample draft is open in the workbench: its marks, its problems and its figures are the command line's. */
export async function checkSampleDraft(
  checks: Checks,
  workbench: Workbench,
  folder: string,
  draft: string,
): Promise<void> {
  const name = draft.slice(draft.lastIndexOf('/') + 1);
  const expected = checkedByCommandLine(join(folder, draft));

  await checks.check('the sample draft is open with marks in its text', async () => {
    await workbench.editor(name).waitFor({ timeout: 60_000 });
    await workbench.marks(name).first().waitFor({ timeout: 60_000 });
    return `${await workbench.marks(name).count()} in sight`;
  });

  await checks.check('status bar and gauge view show the figure of the command line', async () => {
    const percent = Math.floor(Number((expected.readable * 1000).toFixed(6))) / 10;
    expectSame(await workbench.readable((shown) => shown === percent), percent, 'the status bar');
    expectSame(await workbench.gaugePercent((shown) => shown === percent), percent, 'the gauge view');
    return `${percent} %`;
  });

  await checks.check('the Problems panel lists the findings of the command line', async () => {
    const count = expected.findings.length;
    await until(`${count} problems`, async () => {
      const text = await workbench.page.locator('.statusbar-item[id="status.problems"]').textContent();
      const total = (text?.match(/\d+/g) ?? []).reduce((sum, figure) => sum + Number(figure), 0);
      return total === count ? true : undefined;
    });
    const rows = await workbench.problems();
    const places = expected.findings.map(({ line, column }) => `at line ${line} and character ${column}`);
    const strange = rows.filter((row) => !places.some((place) => row.includes(place)));
    expectSame(strange, [], 'rows that the command line does not know');
    if (rows.length === 0) throw new Error('No rows.');
    return `${count}`;
  });
}
