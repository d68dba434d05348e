import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, test } from 'vitest';
import type { PrintOrder } from '../../server/src/materials/order.ts';
import { type GreyPicture, greyPng, readGreyPng, readPgm, worstDifference } from '../support/grey-picture.ts';
import { numberedPages, printed, storyToPrint } from '../support/printed-story.ts';
import { hasProgram, outputOf } from '../support/programs.ts';

/**
 * How pages look, beside kept pictures of them in `tests/printed-pages` that somebody has looked at. Edges are smoothed a
 * little otherwise by each version of pdftoppm, so no square of 12 dots may differ by more than 12 of 255 in the mean; a
 * letter that is missing makes more than that.
 * `RENEW_PAGES=1 npm run test:unit -- tests/command-line/printed-look` takes the pictures anew.
 */
const tolerance = 12;
const dotsPerInch = 32;

const pages = [
  '> Picture walk: Where is the box?\n\n![A hill](hill.svg)\n"The box was in a shed," said Kim.\nA duck was in it, and a cake!',
  ...numberedPages(2),
  '![The duck naps]()\nThe duck had a nap at the pond.\n\n> Ask: What is next?',
];
const story = storyToPrint(pages, { frontMatter: 'names: [Kim]\nstory words:\n  pond: a small lake\n' });
const looks: readonly (readonly [string, number, Partial<PrintOrder> & Pick<PrintOrder, 'material'>])[] = [
  ['book-title', 1, { material: 'book' }],
  ['book-page', 2, { material: 'book' }],
  ['book-frame', 5, { material: 'book', paper: 'a4' }],
  ['booklet-side', 2, { material: 'book', layout: 'booklet' }],
  ['teacher', 1, { material: 'teacher' }],
  ['practice-boxes', 2, { material: 'practice' }],
  ['cards', 1, { material: 'cards' }],
];

const folder = mkdtempSync(join(tmpdir(), 'battledore-look-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** A page of a file as pdftoppm shows it. */
function shownPage(file: string, page: number): GreyPicture {
  const one = ['-f', `${page}`, '-l', `${page}`, '-singlefile'];
  outputOf('pdftoppm', '-r', `${dotsPerInch}`, '-gray', ...one, file, file);
  return readPgm(readFileSync(`${file}.pgm`));
}

describe.skipIf(!hasProgram('pdftoppm'))('pdftoppm (skipped where poppler-utils is not installed)', () => {
  test.each(looks)('shows %s as it was when it was looked at', (name, page, { material, ...wish }) => {
    const file = join(folder, `${name}.pdf`);
    writeFileSync(file, printed(material, [story], wish).bytes);
    const now = shownPage(file, page);
    const kept = fileURLToPath(new URL(`../printed-pages/${name}.png`, import.meta.url));
    if (process.env.RENEW_PAGES === '1') writeFileSync(kept, greyPng(now));
    expect(worstDifference(now, readGreyPng(readFileSync(kept)))).toBeLessThanOrEqual(tolerance);
  });

  test('a letter that is lost is more than the tolerance allows', () => {
    const [right, wrong] = ['The net is in the box.', 'The net is in the ox.'].map((sentence, index) => {
      const file = join(folder, `letter-${index}.pdf`);
      writeFileSync(file, printed('book', [storyToPrint([sentence])]).bytes);
      return shownPage(file, 2);
    });
    if (right === undefined || wrong === undefined) throw new Error('Nothing was drawn.');
    expect(worstDifference(right, wrong)).toBeGreaterThan(2 * tolerance);
  });
});
