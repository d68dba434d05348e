import { expectNoBarriers } from './axe.ts';
import type { Checks } from './checks.ts';
import { draftName } from './revising-checks.ts';
import type { Workbench } from './workbench.ts';

const themes = ['Light Modern', 'Dark Modern', 'Light High Contrast', 'Dark High Contrast'] as const;

/** Every page of the extension: how it is brought to the front, and what only it has. */
const pages = [
  ['gauge', 'Battledore: Show Gauge', 'main > .gauge'],
  ['words', 'Focus on Words View', 'body[data-kind="words"] ul.words button'],
  ['chain', 'Focus on Chain View', 'body[data-kind="chain"] button'],
  ['fit', 'Focus on Fit View', 'body[data-kind="fit"] svg.curve'],
  ['series', 'Battledore: Show Series', '[role="grid"]'],
  ['preview', 'Battledore: Preview the Printed Book', 'main.pages svg'],
] as const;

/** All pages in all kinds of themes, looked through for barriers. */
export async function checkAccessibility(
  checks: Checks,
  workbench: Workbench,
  picture: (what: string) => Promise<unknown>,
): Promise<void> {
  await workbench.editor(draftName).waitFor({ timeout: 60_000 });
  await workbench.readable();
  for (const theme of themes) {
    await chooseTheme(workbench, theme);
    for (const [name, command, mark] of pages) {
      await checks.check(`${name}, ${theme}: axe finds no barrier`, async () => {
        await workbench.showTab(draftName);
        await workbench.command(command);
        await expectNoBarriers(await workbench.pageWith(mark));
        await picture(`-${name}-${theme.toLowerCase().replaceAll(' ', '-')}`);
      });
    }
  }
}

async function chooseTheme(workbench: Workbench, theme: string): Promise<void> {
  await workbench.command('Preferences: Color Theme');
  await workbench.page.locator('.quick-input-widget input[type="text"]').fill(theme);
  await workbench.page
    .locator('.quick-input-list .monaco-list-row')
    .filter({ hasText: theme })
    .first()
    .click();
  await workbench.page.waitForTimeout(500);
}
