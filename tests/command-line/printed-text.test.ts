import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { typographic } from '../../server/src/materials/layout/typographic.ts';
import { readStory } from '../../server/src/story/read-story.ts';
import { type MemoryFile, terminal } from '../support/memory-host.ts';
import { packagePhonics } from '../support/package-phonics.ts';
import { hasProgram, outputOf } from '../support/programs.ts';

/** The samples, printed, and read again by programs that know nothing of Battledore. */
const samples = new URL('../../samples/', import.meta.url);
const files: Record<string, MemoryFile> = {};
for (const name of readdirSync(samples))
  if (/\.(md|yaml)$/.test(name)) files[name] = readFileSync(new URL(name, samples), 'utf8');
for (const name of readdirSync(new URL('art/', samples)))
  files[`art/${name}`] = readFileSync(new URL(`art/${name}`, samples));
const stories = Object.keys(files).filter((name) => /^\d.*\.md$/.test(name));

const folder = mkdtempSync(join(tmpdir(), 'battledore-printed-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Prints and gives the paths of the files. */
function printed(...given: readonly string[]): readonly string[] {
  const { errors, written } = terminal(files, packagePhonics)('print', ...given);
  if (written === undefined) throw new Error(errors);
  return [...written].map(([path, bytes]) => {
    const file = join(folder, path.replace(/^.*\//, ''));
    writeFileSync(file, bytes);
    return file;
  });
}

/** The child's text of each page as it has to come out: sentence by sentence, a space between them. */
function childPages(name: string): readonly string[] {
  return readStory(String(files[name]))
    .pages.map(({ page }) => page.sentences.map(({ text }) => typographic(text)).join(' '))
    .filter((text) => text !== '');
}

const folded = (text: string): string => text.replace(/\s+/g, ' ').trim();
const withoutNumber = (text: string): string => folded(text.replace(/\n\d+\s*$/, ''));

describe.skipIf(!hasProgram('pdftotext'))('pdftotext (skipped where poppler-utils is not installed)', () => {
  test.each(stories)('gives back the text of %s, page by page, in order', (name) => {
    const [file = ''] = printed(name);
    const pages = outputOf('pdftotext', file, '-').split('\f').slice(0, -1);
    expect(pages.slice(1).map(withoutNumber)).toEqual(childPages(name));
    expect(pages.slice(1).map((page) => page.trim().split('\n').at(-1))).toEqual(
      pages.slice(1).map((_, index) => String(index + 1)),
    );
  });

  test.each(stories.slice(0, 4))('gives back the text of %s as a booklet, page by page', (name) => {
    const [file = ''] = printed(name, '--layout', 'booklet');
    const count = Number(/Pages: +(\d+)/.exec(outputOf('pdfinfo', file))?.[1]);
    const halves = Array.from({ length: count }, (_, side) =>
      [0, 396].map((x) =>
        outputOf(
          'pdftotext',
          '-f',
          `${side + 1}`,
          '-l',
          `${side + 1}`,
          '-x',
          `${x}`,
          '-y',
          '0',
          '-W',
          '396',
          '-H',
          '612',
          file,
          '-',
        ),
      ),
    ).flat();
    const byNumber = new Map(
      halves.map((half) => [Number(/\n(\d+)\s*$/.exec(half)?.[1] ?? -1), withoutNumber(half)]),
    );
    expect(childPages(name).map((_, index) => byNumber.get(index + 1))).toEqual(childPages(name));
  });

  test('reads the structure of a booklet in the order of the book', () => {
    const [name = ''] = stories;
    const [file = ''] = printed(name, '--layout', 'booklet');
    const said = [...outputOf('pdfinfo', '-struct-text', file).matchAll(/^ +"(.*)"$/gm)].map(
      ([, text]) => text,
    );
    expect(folded(said.join(' '))).toContain(folded(childPages(name).join(' ')).slice(0, 60));
    const sentences = readStory(String(files[name])).pages.flatMap(({ page }) =>
      page.sentences.map(({ text }) => typographic(text)),
    );
    expect(said.filter((text) => text !== '').slice(3)).toEqual(sentences);
  });

  test('gives back all stories of a collection in order', () => {
    const [file = ''] = printed('.', '--out', 'all.pdf');
    const text = folded(outputOf('pdftotext', file, '-').split('\f').map(withoutNumber).join(' '));
    const places = stories.map((name) => text.indexOf(childPages(name).join(' ')));
    expect(places).not.toContain(-1);
    expect(places).toEqual([...places].sort((one, other) => one - other));
  });

  test('gives back the text of the teacher’s copy, each line with its count', () => {
    const [file = ''] = printed('04-the-tin-man.md', '--teacher');
    const text = outputOf('pdftotext', '-layout', file, '-');
    expect(text).toMatch(/A tin pot is on top\. +6\n/);
    expect(text).toMatch(/Can Nod tip it\? +10\n/);
  });
});

describe.skipIf(!hasProgram('qpdf'))('qpdf (skipped where it is not installed)', () => {
  test.each([
    [['04-the-tin-man.md']],
    [['04-the-tin-man.md', '--layout', 'booklet', '--paper', 'a4']],
    [['04-the-tin-man.md', '--teacher']],
    [['04-the-tin-man.md', '--practice']],
    [['04-the-tin-man.md', '--cards']],
    [['.', '--out', 'checked.pdf']],
  ])('finds nothing wrong with %j', (given) => {
    for (const file of printed(...given))
      expect(outputOf('qpdf', '--check', file)).toContain('No syntax or stream encoding errors found');
  });
});
