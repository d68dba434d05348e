import {
  type ChainWord,
  type Material,
  type PictureFile,
  type Printed,
  type PrintedStory,
  type PrintOrder,
  practiceParts,
} from '../../server/src/materials/order.ts';
import { print } from '../../server/src/materials/print.ts';
import { packageFonts } from './package-fonts.ts';
import { packagePhonics } from './package-phonics.ts';
import { reviewed } from './reviewed.ts';

/** A sequence of two lessons for stories that are printed. */
export const printSequence = `title: Fern Lane
targets: { readable: 80, sentence: 9, page: 20, practice: 2, repeats: 1 }
lessons:
  - name: "1"
    title: first letters
    spellings: [m as in mud, s as in sun, t as in top, a as in map, p as in pan, n as in nap, o as in top, e as in net,
      d as in mud, g as in gap, u as in mud, i as in pin, h as in hat, b as in bat, r as in red, w as in wet, c as in cat,
      l as in log, f as in fan, k as in kit]
    high-frequency words: [the, a, is, to, said]
  - name: "2"
    title: x and sh
    spellings: [x as in box, sh as in ship, ck as in duck, a_e as in cake]
    high-frequency words: [was, of]
`;

/** A picture of a hill and a sun, three wide and two high. */
export const hillPicture = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 300 200">
<rect width="300" height="200" fill="#eef"/><circle cx="230" cy="50" r="24" fill="gold" stroke="#333" stroke-width="3"/>
<path d="M0 180Q80 60 170 150T300 140V200H0Z" fill="#9b8" stroke="#333" stroke-width="3"/></svg>`;

/** A chain of words as the package reads them; whether each is a step from the one before is the caller's to see to. */
export function chainOf(...words: readonly string[]): readonly ChainWord[] {
  return words.map((word) => ({ word, parts: packagePhonics.readingsOf(word)[0]?.parts ?? [] }));
}

/** A chain that changes, adds and takes away. */
export const smallChain: readonly ChainWord[] = chainOf('pan', 'pin', 'spin', 'spit', 'sit');

/** What a test may say of a story that is printed. */
export interface StoryWish {
  readonly lesson?: string;
  /** Another sequence than the usual one. */
  readonly sequence?: string;
  readonly title?: string;
  readonly frontMatter?: string;
  readonly pictures?: Readonly<Record<string, string | Uint8Array | { readonly trouble: string }>>;
  readonly chain?: readonly ChainWord[];
}

/** A story of the pages that are given, as a host would hand it to the printer. */
export function storyToPrint(pages: readonly string[], wish: StoryWish = {}): PrintedStory {
  const {
    lesson = '2',
    sequence = printSequence,
    title = 'The Red Box',
    frontMatter = '',
    pictures = {},
    chain = smallChain,
  } = wish;
  const text = `---\ntitle: ${title}\nlesson: "${lesson}"\n${frontMatter}---\n${pages.join('\n\n---\n\n')}\n`;
  const files = Object.entries({ 'hill.svg': hillPicture, ...pictures }).map(
    ([address, file]): [string, PictureFile] => [
      address,
      typeof file === 'string' ? { bytes: Buffer.from(file) } : 'trouble' in file ? file : { bytes: file },
    ],
  );
  return { review: reviewed(text, sequence, packagePhonics), pictures: new Map(files), chain };
}

/** Pages that differ, each with a picture and two sentences. */
export function numberedPages(count: number): readonly string[] {
  const things = ['mud', 'sun', 'pan', 'net', 'hat', 'bat', 'log', 'fan'];
  return Array.from(
    { length: count },
    (_, index) =>
      `![Picture ${index + 1}](hill.svg)\nThe ${things[index % 8]} is in the box.\nIt is ${index + 1} to a shed.`,
  );
}

/** An order of a book on letter paper, a page a sheet. */
export function orderOf(stories: readonly PrintedStory[]): PrintOrder {
  return {
    material: 'book',
    stories,
    layout: 'page',
    paper: 'letter',
    fonts: packageFonts,
    title: 'Stories of Fern Lane',
    parts: new Set(practiceParts),
  };
}

/** Prints with the package's fonts, as a host would. */
export function printed(
  material: Material,
  stories: readonly PrintedStory[],
  wish: Partial<PrintOrder> = {},
): Printed {
  return print({ ...orderOf(stories), material, ...wish });
}
