import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Frame } from 'playwright-core';
import { type Checks, expectSame } from './checks.ts';
import { until, type Workbench } from './workbench.ts';
import { sequenceName } from './writing-desk.ts';

/** What a lesson of the samples loses in the check, with the comma behind it. */
const spelling = 'sh as in ship';

/**
 * The sample series at one look: a lesson is changed and not saved, the stories that fail by it are seen in the status bar,
 * in the view and by the command, and one of them is opened where it fails.
 */
export async function checkSeries(
  checks: Checks,
  workbench: Workbench,
  folder: string,
  picture: (what: string) => Promise<unknown>,
): Promise<void> {
  const text = readFileSync(join(folder, sequenceName), 'utf8');
  const stories = workbench.page.locator('.statusbar-item[id$="battledore.stories"]');
  const shortInStatus = (count: number, all: number): Promise<void> =>
    stories.filter({ hasText: new RegExp(`${count} of ${all} stories`) }).waitFor();
  let view: Frame | undefined;
  let before = { short: 0, all: 0 };

  await checks.check('the status bar says how many stories fall short', async () => {
    await workbench.editor(sequenceName).waitFor({ timeout: 60_000 });
    await stories.waitFor({ timeout: 60_000 });
    before = await until('the figure', async () => shortOf((await stories.textContent()) ?? ''));
    if (before.all < 10) throw new Error(`There are ${before.all} stories.`);
    return `${before.short} of ${before.all}`;
  });

  await checks.check('the view of the series opens beside the sequence', async () => {
    await workbench.command('Battledore: Show Series');
    view = await viewOf(workbench);
    expectSame(await view.locator('h1').textContent(), /title: (.*)/.exec(text)?.[1], 'the title');
    expectSame(shortOf(await summary(view)), before, 'the figures of the view');
    expectSame(await grid(view, 'Stories').getAttribute('aria-rowcount'), String(before.all + 1), 'rows');
    await picture('-before');
  });

  await checks.check('a lesson changes, unsaved: status bar and view say who falls short now', async () => {
    const { line, column } = placeOf(text, spelling);
    await workbench.focusText(sequenceName);
    await workbench.goTo(line, column);
    await workbench.press('Shift+ArrowRight', `${spelling}, `.length);
    const start = performance.now();
    await workbench.press('Delete');
    const after = await until('more stories that fall short', async () => {
      const now = shortOf((await stories.textContent()) ?? '');
      return now !== undefined && now.short > before.short ? now : undefined;
    });
    const time = performance.now() - start;
    await until('the same in the view', async () =>
      JSON.stringify(shortOf(await summary(view))) === JSON.stringify(after) ? true : undefined,
    );
    expectSame(readFileSync(join(folder, sequenceName), 'utf8') === text, true, 'nothing is saved');
    await view
      ?.locator('section')
      .nth(2)
      .evaluate((part) => part.scrollIntoView());
    await workbench.page.waitForTimeout(200);
    await picture('-changed');
    return `${after.short} of ${after.all}, in the status bar after ${time.toFixed(0)} ms`;
  });

  await checks.check('the commands list the stories', async () => {
    const rows = workbench.page.locator('.quick-input-list .monaco-list-row');
    await workbench.command('Battledore: Show Stories That Fall Short');
    await rows.filter({ hasText: 'since the last change' }).first().waitFor();
    await workbench.press('Escape');
    await workbench.command('Battledore: Show What This Sequence Would Change');
    await rows.filter({ hasText: 'would fall short' }).first().waitFor();
    await workbench.press('Escape');
  });

  await checks.check('a story that falls short opens where it does', async () => {
    const failing = grid(view, 'Stories').locator('[role=rowheader].short').last();
    const title = await failing.textContent();
    await failing.click();
    const tab = workbench.page.locator('.tab.active[data-resource-name$=".md"]');
    await tab.waitFor();
    const name = (await tab.getAttribute('data-resource-name')) ?? '';
    await workbench.marks(name).first().waitFor();
    const line = await until('the caret past the front matter', async () => {
      const at = await workbench.page.locator('.statusbar-item[id="status.editor.selection"]').textContent();
      const found = Number(/Ln (\d+)/.exec(at ?? '')?.[1]);
      return found > 3 ? found : undefined;
    });
    const marked = readFileSync(join(folder, name), 'utf8').split('\n')[line - 1];
    await picture('-opened');
    return `${title}, line ${line}: ${marked}`;
  });

  await checks.check('by the keyboard: arrow keys in the table, Enter opens at the word', async () => {
    const words = grid(view, 'High-frequency words by stories');
    await words.evaluate((element) => element.scrollIntoView());
    await words.locator('[tabindex="0"]').focus();
    await workbench.press('Control+Home');
    await workbench.press('ArrowDown');
    await workbench.press('ArrowRight', 3);
    const cell = words.locator('[tabindex="0"]');
    expectSame(await cell.getAttribute('aria-colindex'), '4', 'the column of the active cell');
    const uses = Number(await cell.textContent());
    if (uses === 0) throw new Error('“the” does not stand in the first story.');
    await workbench.press('Enter');
    const selection = workbench.page.locator('.statusbar-item[id="status.editor.selection"]');
    await selection.filter({ hasText: '(3 selected)' }).waitFor();
    return `${uses} uses`;
  });

  await checks.check('the report is saved', async () => {
    await workbench.command('Battledore: Save Series Report');
    const input = workbench.page.locator('.quick-input-widget');
    await input.locator('.monaco-list-row').filter({ hasText: 'HTML' }).click();
    await until('the place to save', async () =>
      (await input.locator('input[type="text"]').inputValue()).endsWith('.html') ? true : undefined,
    );
    await workbench.press('Enter');
    const html = await until(
      'the file',
      async () => readFileSync(join(folder, 'series.html'), 'utf8') || undefined,
    );
    if (!html.includes('<h2 id="gaps">What is missing</h2>')) throw new Error(html.slice(0, 300));
  });

  await checks.check('taking the change back puts all as it was', async () => {
    await workbench.showTab(sequenceName);
    await workbench.focusText(sequenceName);
    await workbench.press('Control+Z');
    await shortInStatus(before.short, before.all);
    await until('the view too', async () =>
      JSON.stringify(shortOf(await summary(view))) === JSON.stringify(before) ? true : undefined,
    );
    await workbench.command('Preferences: Toggle between Light/Dark Themes');
    await workbench.page.waitForTimeout(700);
    await picture('-dark');
  });
}

/** `12 of 14 stories fall short`, `14 stories, 12 of them fall short of a target`. */
function shortOf(said: string): { readonly short: number; readonly all: number } | undefined {
  const text = said.replaceAll('\u00a0', ' ');
  const ofAll = /(\d+) of (\d+) stories fall/.exec(text);
  if (ofAll !== null) return { short: Number(ofAll[1]), all: Number(ofAll[2]) };
  const inView = /(\d+) stories, (\d+) of them fall/.exec(text);
  return inView === null ? undefined : { short: Number(inView[2]), all: Number(inView[1]) };
}

async function viewOf(workbench: Workbench): Promise<Frame> {
  const view = await workbench.pageWith('[role=grid]');
  await until('its summary', async () => ((await summary(view)) === '' ? undefined : true));
  return view;
}

async function summary(view: Frame | undefined): Promise<string> {
  return (await view?.locator('p.summary').first().textContent()) ?? '';
}

function grid(view: Frame | undefined, name: string) {
  if (view === undefined) throw new Error('The view did not open.');
  return view.getByRole('grid', { name, exact: true });
}

function placeOf(text: string, part: string): { readonly line: number; readonly column: number } {
  const before = text.slice(0, text.indexOf(part)).split('\n');
  return { line: before.length, column: (before.at(-1)?.length ?? 0) + 1 };
}
