/// <reference lib="dom" />
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Frame } from 'playwright-core';
import { hasProgram, outputOf } from '../support/programs.ts';
import { expectNoBarriers } from './axe.ts';
import { type Checks, expectSame } from './checks.ts';
import { until, type Workbench } from './workbench.ts';

/** The sample that is printed; it has a picture on every page. */
export const printedName = '04-the-tin-man.md';
const stem = printedName.replace('.md', '');

/** Every document as a command names it, the suffix of its file, and what has to stand in it. */
const documents = [
  ["Teacher's Copy", "the Teacher's Copy", '-teacher', /Teacher’s copy\. Lesson/, 'Letter'],
  ['practice pages', 'Practice Pages', '-practice', /Key for the teacher/, 'A4'],
  ['cards', 'Cards', '-cards', /Letter cards/, 'A4'],
] as const;

/** The preview beside the text, and every document printed to disk from the editor. */
export async function checkPrinting(
  checks: Checks,
  workbench: Workbench,
  folder: string,
  picture: (name: string) => Promise<unknown>,
): Promise<void> {
  await workbench.editor(printedName).waitFor({ timeout: 60_000 });
  await workbench.readable();
  let preview: Frame | undefined;
  const shown = (): Frame => {
    if (preview === undefined) throw new Error('There is no preview.');
    return preview;
  };
  const labels = () =>
    shown()
      .locator('svg[role="img"]')
      .evaluateAll((pages) => pages.map((page) => page.getAttribute('aria-label') ?? ''));

  await checks.check(
    'the preview opens beside the text with title, lesson, pictures and the printed face',
    async () => {
      await workbench.focusText(printedName);
      await workbench.command('Battledore: Preview the Printed Book');
      preview = await workbench.pageWith('main.pages svg');
      const [title = ''] = await labels();
      if (!/The Tin Man.*Lesson 4/.test(title)) throw new Error(`The first page says: ${title}`);
      await until('the faces', async () =>
        (await shown().evaluate(
          () => [...document.fonts].filter(({ status }) => status === 'loaded').length,
        )) === 4
          ? true
          : undefined,
      );
      const pictures = await shown().evaluate(async () => {
        const sources = [...document.querySelectorAll('image')].map(
          (image) => image.getAttribute('href') ?? '',
        );
        return Promise.all(
          sources.map(async (source) => {
            const image = new Image();
            image.src = source;
            await image.decode();
            return image.naturalWidth;
          }),
        );
      });
      if (pictures.length === 0 || pictures.includes(0)) throw new Error(`Pictures: ${pictures.join(' ')}`);
      await picture('-preview-title');
      return `${(await labels()).length} pages, ${pictures.length} pictures`;
    },
  );

  await checks.check('keys turn the pages', async () => {
    const where = shown().locator('.where');
    await shown().locator('main.pages').focus();
    await workbench.press('PageDown');
    await where.filter({ hasText: 'Page 2 of' }).waitFor();
    await workbench.press('End');
    await until('the last page', async () =>
      /Page (\d+) of \1$/.test((await where.textContent()) ?? '') ? true : undefined,
    );
    await workbench.press('Home');
    await where.filter({ hasText: 'Page 1 of' }).waitFor();
  });

  await checks.check('the preview follows typing and stays at the page that is looked at', async () => {
    await shown().locator('main.pages').focus();
    await workbench.press('PageDown', 3);
    const where = (await shown().locator('.where').textContent()) ?? '';
    await workbench.focusText(printedName);
    await workbench.press('Control+End');
    const begun = Date.now();
    await workbench.type('\nNod can sit in it.');
    await until('the sentence in the preview', async () =>
      (await labels()).at(-1)?.includes('Nod can sit in it.') ? true : undefined,
    );
    const took = Date.now() - begun;
    expectSame(await shown().locator('.where').textContent(), where, 'the page that is looked at');
    await picture('-preview-typing');
    return `${took} ms from the first key to the page`;
  });

  await checks.check('axe finds nothing wrong with the preview', async () => {
    await expectNoBarriers(shown());
  });

  await checks.check('a picture that is not there is named, and nothing can be printed', async () => {
    const path = join(folder, printedName);
    const before = readFileSync(path, 'utf8');
    await workbench.save(printedName);
    const saved = readFileSync(path, 'utf8');
    if (saved === before) throw new Error('The file has not changed.');
    writeFileSync(path, saved.replace(/\(art\/[^)]*\)/, '(../outside.svg)'));
    await shown().locator('.notice').filter({ hasText: 'leads out of the folder' }).waitFor();
    if (await shown().getByRole('button', { name: 'Print…' }).isEnabled())
      throw new Error('It can be printed.');
    await picture('-preview-missing');
    writeFileSync(path, saved);
    await until('nothing to be mended', async () =>
      (await shown().getByRole('button', { name: 'Print…' }).isEnabled()) ? true : undefined,
    );
  });

  await checks.check('the other documents can be looked at', async () => {
    const counts: string[] = [];
    for (const [value, expected] of [
      ['teacher', /Teacher’s copy/],
      ['practice', /Key for the teacher/],
      ['cards', /Word cards/],
    ] as const) {
      await shown().getByLabel('Document').selectOption(value);
      await until(value, async () => (expected.test((await labels()).join(' ')) ? true : undefined));
      await picture(`-preview-${value}`);
      counts.push(`${value} ${(await labels()).length}`);
    }
    await shown().getByLabel('Document').selectOption('book');
    await shown().getByLabel('Layout').selectOption('booklet');
    await until('the booklet', async () => {
      const sides = await labels();
      return sides.length === 6 && /The Tin Man.*Lesson 4/.test(sides[0] ?? '') ? true : undefined;
    });
    await picture('-preview-booklet');
    return counts.join(', ');
  });

  await checks.check('“Print…” in the preview prints what is shown', async () => {
    const sides = (await labels()).length;
    await shown().getByRole('button', { name: 'Print…' }).click();
    const file = await save(workbench, folder, `${stem}-booklet.pdf`);
    return inspect(file, /Nod can sit in it\./, sides);
  });

  await checks.check('the child’s book is printed', async () => {
    await printBy(workbench, "Print the Child's Book", ['One page a sheet', 'Letter']);
    return inspect(await save(workbench, folder, `${stem}.pdf`), /Nod can sit in it\./);
  });

  for (const [name, title, suffix, expected, paper] of documents) {
    await checks.check(`print: ${name}`, async () => {
      await printBy(workbench, `Print ${title}`, [paper]);
      return inspect(await save(workbench, folder, `${stem}${suffix}.pdf`), expected);
    });
  }

  await checks.check('stories are printed as one book', async () => {
    await workbench.focusText(printedName);
    await workbench.command('Battledore: Print Stories as One Book');
    const list = workbench.page.locator('.quick-input-widget');
    await list.locator('.monaco-list-row').filter({ hasText: 'The Tin Man' }).waitFor();
    await picture('-stories-of-the-book');
    await list.getByRole('button', { name: 'OK' }).click();
    for (const choice of ['One page a sheet', 'A4'])
      await list.locator('.monaco-list-row').filter({ hasText: choice }).first().click();
    return inspect(
      await save(workbench, folder, 'stories.pdf'),
      /12 stories Lessons 7 to 36 Contents A Tub for Nod/,
    );
  });

  await checks.check('a file that is there is not replaced unless somebody says so', async () => {
    const path = join(folder, `${stem}.pdf`);
    writeFileSync(path, 'mine');
    await printBy(workbench, "Print the Child's Book", ['One page a sheet', 'Letter']);
    await confirmPlace(workbench, `${stem}.pdf`);
    // The editor's own dialog asks first; not every dialog does, so the extension asks again.
    await workbench.page.locator('.quick-input-widget').getByText('already exists').waitFor();
    await workbench.press('Enter');
    const dialog = workbench.page.locator('.monaco-dialog-box');
    await dialog.waitFor();
    await dialog.getByRole('button', { name: 'Cancel' }).click();
    await dialog.waitFor({ state: 'detached' });
    await new Promise((resolve) => setTimeout(resolve, 500));
    expectSame(readFileSync(path, 'latin1'), 'mine', 'the file');
    await workbench.press('Escape', 2);
  });
}

async function printBy(workbench: Workbench, title: string, choices: readonly string[]): Promise<void> {
  await workbench.focusText(printedName);
  await workbench.command(`Battledore: ${title}`);
  for (const choice of choices) {
    await workbench.page
      .locator('.quick-input-widget .monaco-list-row')
      .filter({ hasText: choice })
      .first()
      .click();
  }
}

async function confirmPlace(workbench: Workbench, name: string): Promise<void> {
  const input = workbench.page.locator('.quick-input-widget input[type="text"]');
  await until('the place to save', async () =>
    (await input.inputValue({ timeout: 1_000 })).endsWith(`/${name}`) ? true : undefined,
  );
  await workbench.press('Enter');
}

/** Takes the place that is offered, and waits for the whole file. */
async function save(workbench: Workbench, folder: string, name: string): Promise<string> {
  await confirmPlace(workbench, name);
  const path = join(folder, name);
  await until(`the file ${name}`, async () =>
    existsSync(path) && readFileSync(path).subarray(-6).toString('latin1') === '%%EOF\n' ? true : undefined,
  );
  return path;
}

/** What programs that know nothing of Battledore say of a printed file. */
function inspect(path: string, expected: RegExp, sides?: number): string {
  const said: string[] = [];
  if (hasProgram('pdftotext')) {
    const text = outputOf('pdftotext', path, '-');
    if (!expected.test(text.replace(/\s+/g, ' ')))
      throw new Error(`It does not say ${expected}: ${text.slice(0, 300)}`);
    const pages = text.split('\f').length - 1;
    if (sides !== undefined) expectSame(pages, sides, 'as many pages as the preview');
    said.push(`${pages} pages`);
  }
  if (hasProgram('qpdf')) {
    const checked = outputOf('qpdf', '--check', path);
    if (!checked.includes('No syntax or stream encoding errors found')) throw new Error(checked);
    said.push('qpdf content');
  }
  return said.join(', ');
}
