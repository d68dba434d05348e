import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Frame } from 'playwright-core';
import type { Checks } from './checks.ts';
import { until, type Workbench } from './workbench.ts';
import { storyName, type WritingDesk } from './writing-desk.ts';

/** The views beside the gauge, and printing: each does its work once. */
export async function checkWorkshop(checks: Checks, workbench: Workbench, desk: WritingDesk): Promise<void> {
  await workbench.editor(storyName).waitFor({ timeout: 60_000 });
  await workbench.readable();
  const shown = async (): Promise<string> =>
    ((await workbench.editor(storyName).locator('.view-lines').textContent()) ?? '').replaceAll(
      '\u00a0',
      ' ',
    );

  await checks.check('a word of the finder is written at the caret', async () => {
    await workbench.focusText(storyName);
    await workbench.press('Control+End');
    const view = await openView(workbench, 'Words', 'words');
    const first = view.locator('button.word').first();
    const word = ((await first.evaluate((button) => button.firstChild?.textContent)) ?? '').toLowerCase();
    await first.press('Enter');
    await until(`“${word}” in the story`, async () =>
      (await shown()).trimEnd().toLowerCase().endsWith(word) ? true : undefined,
    );
    return word;
  });

  await checks.check('a chain is made and written as a note', async () => {
    const view = await openView(workbench, 'Chain', 'chain');
    await view.getByRole('button', { name: 'Make Chain' }).click();
    await view.locator('ol.chain li').nth(1).waitFor();
    await view.getByRole('button', { name: 'Insert as Note' }).click();
    await until('the note', async () => ((await shown()).includes('> Word chain: ') ? true : undefined));
  });

  await checks.check('the fit shows a curve and a row for each lesson', async () => {
    const view = await openView(workbench, 'Fit', 'fit');
    await view.locator('svg.curve polyline.share').waitFor();
    const rows = await view.locator('tbody tr').count();
    if (rows < 2) throw new Error(`There are ${rows} rows.`);
    return `${rows} lessons`;
  });

  await checks.check('print writes a PDF', async () => {
    await workbench.focusText(storyName);
    await workbench.command('Battledore: Print Cards');
    const input = workbench.page.locator('.quick-input-widget');
    await input.getByText('A4').click();
    await until('the place to save', async () =>
      (await input.locator('input[type="text"]').inputValue()).endsWith('.pdf') ? true : undefined,
    );
    await workbench.press('Enter');
    const name = await until('the file', async () =>
      readdirSync(desk.folder).find((file) => file.endsWith('.pdf')),
    );
    const start = await until('its text', async () => {
      const text = readFileSync(join(desk.folder, name)).subarray(0, 4).toString('latin1');
      return text === '' ? undefined : text;
    });
    if (start !== '%PDF') throw new Error(`It begins with “${start}”.`);
    return name;
  });
}

/** Opens a view and gives the frame of its page. */
export async function openView(workbench: Workbench, title: string, kind: string): Promise<Frame> {
  await workbench.command(`Focus on ${title} View`);
  return workbench.pageWith(`body[data-kind="${kind}"]`);
}
