import { readdirSync, readFileSync } from 'node:fs';
import { type Checks, expectSame } from './checks.ts';
import { until, type Workbench } from './workbench.ts';
import { storyName, type WritingDesk } from './writing-desk.ts';

/** The server's process is killed under the editor: it comes back, the marks with it, and nothing that was written is lost. Linux only. */
export async function checkRecovery(checks: Checks, workbench: Workbench, desk: WritingDesk): Promise<void> {
  const written = 'The man might sit.';

  await checks.check(
    'the server is killed while something is unsaved: marks, gauge and text come back',
    async () => {
      await workbench.editor(storyName).waitFor({ timeout: 60_000 });
      await workbench.readable();
      await workbench.focusText(storyName);
      await workbench.press('Control+End');
      await workbench.type(written);
      await workbench.readable((percent) => percent === 85.7);
      const before = await until('the server', async () => serverProcess());
      process.kill(before, 'SIGKILL');
      const start = performance.now();
      await until('another server', async () => {
        const now = serverProcess();
        return now !== undefined && now !== before ? now : undefined;
      });
      // What is typed now is only known to the server that has come in between.
      await workbench.type(' It might.');
      await workbench.readable((percent) => percent < 85.7);
      await until('the marks', async () =>
        (await workbench.marks(storyName).count()) >= 3 ? true : undefined,
      );
      const shown = (await workbench.editor(storyName).locator('.view-lines').textContent()) ?? '';
      expectSame(shown.replaceAll('\u00a0', ' ').includes(`${written} It might.`), true, 'the text is there');
      expectSame(desk.read(storyName).includes(written), false, 'nothing is saved unasked');
      return `${Math.round(performance.now() - start)} ms`;
    },
  );

  await checks.check('killed again and again, it says so and comes back when it is asked', async () => {
    const stopped = workbench.page.locator('.statusbar-item[id$="battledore.readable"]');
    for (let kills = 0; kills < 6; kills++) {
      const running = await until('the server, or the word that it has stopped', async () =>
        ((await stopped.textContent()) ?? '').includes('Battledore stopped') ? 'stopped' : serverProcess(),
      );
      if (running === 'stopped') break;
      process.kill(running, 'SIGKILL');
      await until('its end', async () => (serverProcess() === running ? undefined : true));
      await workbench.page.waitForTimeout(1500);
    }
    await stopped.filter({ hasText: 'Battledore stopped' }).waitFor();
    await workbench.command('Battledore: Restart Checking');
    await workbench.readable((percent) => percent < 85.7);
  });
}

/** The number of the process that runs the packaged server for an editor. */
function serverProcess(): number | undefined {
  const numbers = readdirSync('/proc').filter((name) => /^\d+$/.test(name));
  const found = numbers.find((number) => {
    try {
      const words = readFileSync(`/proc/${number}/cmdline`, 'utf8').split('\0');
      return words.some((word) => /extensions\/battledore\.[^/]+\/server\/dist\/node\.js$/.test(word));
    } catch {
      return false;
    }
  });
  return found === undefined ? undefined : Number(found);
}
