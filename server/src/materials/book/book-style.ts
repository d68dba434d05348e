import { brokenLines, type TextStyle } from '../layout/lines.ts';
import { type Layout, type Paper, pageSize, type Size } from '../layout/paper.ts';
import type { Typeface } from '../pdf/typeface.ts';

/** The smallest letters of the child's book, in points. */
export const smallestSize = 20;

/** How the pages of a book are laid out. Lengths are in points. */
export interface BookStyle {
  readonly page: Size;
  readonly margins: { readonly side: number; readonly top: number; readonly bottom: number };
  /** The sizes that the text may have, the largest first. */
  readonly sizes: readonly number[];
  readonly titleSizes: readonly number[];
  /** The height of a picture below which text is not allowed to press it. */
  readonly leastPicture: number;
}

/** The style of a layout on a paper. */
export function bookStyle(layout: Layout, paper: Paper): BookStyle {
  const page = pageSize(paper, layout);
  return layout === 'page'
    ? {
        page,
        margins: { side: 66, top: 72, bottom: 54 },
        sizes: [32, 30, 28, 26, 24, 22, smallestSize],
        titleSizes: [48, 42, 36, 30, 26, smallestSize],
        leastPicture: 260,
      }
    : {
        page,
        margins: { side: 38, top: 46, bottom: 36 },
        sizes: [26, 24, 22, 21, smallestSize],
        titleSizes: [38, 34, 30, 26, smallestSize],
        leastPicture: 170,
      };
}

/** The height that the page number takes at the foot, with the room above it. */
export const footHeight = 46;

/** How the child's text is set: spaces wide enough for a finger. */
export function childStyle(face: Typeface, size: number): TextStyle {
  return { face, size, wordSpace: 1.7 };
}

/** From base line to base line within a sentence, and from the last line of one sentence to the next, in letter sizes. */
export const leading = { line: 1.42, sentence: 1.72 } as const;

/** Width of the text. */
export function measureOf({ page, margins }: BookStyle): number {
  return page.width - 2 * margins.side;
}

/** A page's sentences, each as the lines it takes. */
export type SetText = readonly (readonly string[])[];

/** Breaks each sentence for itself: every sentence begins a line, and so does what the writer set on a line of its own. */
export function setText(sentences: readonly (readonly string[])[], width: number, style: TextStyle): SetText {
  return sentences.map((lines) => lines.flatMap((line) => brokenLines(line, width, style)));
}

/** From the top of the first line's capitals to the foot of the last line, in points. */
export function heightOf(text: SetText, size: number): number {
  if (text.length === 0) return 0;
  const lines = text.reduce((sum, sentence) => sum + sentence.length - 1, 0);
  return size * (1 + lines * leading.line + (text.length - 1) * leading.sentence);
}

/** Letters are made smaller down to this size so that every sentence fits on a line; further down only for nine of ten. */
const comfortableSize = 22;

/**
 * The size for a whole book: the largest at which every sentence fits on one line and, on every page, the text leaves
 * the picture its room. Where a few long sentences would make all letters small, nine of ten must fit; else the size
 * of the smaller ones at which the fewest sentences are broken; where pages are full, the smallest.
 */
export function sizeFor(
  pages: readonly (readonly (readonly string[])[])[],
  face: Typeface,
  style: BookStyle,
): number {
  const width = measureOf(style);
  const room = style.page.height - style.margins.top - style.margins.bottom - footHeight - style.leastPicture;
  const sentences = pages.flat().length;
  const fitting = style.sizes.flatMap((size) => {
    const set = pages.map((page) => setText(page, width, childStyle(face, size)));
    const given = pages.flat();
    const broken = set.flat().filter((lines, index) => lines.length > (given[index]?.length ?? 1)).length;
    return set.every((text) => heightOf(text, size) <= room) ? [{ size, broken }] : [];
  });
  const whole = fitting.find(({ size, broken }) => size >= comfortableSize && broken === 0);
  const nearlyWhole = fitting.find(({ broken }) => broken * 10 <= sentences);
  const small = fitting
    .filter(({ size }) => size <= comfortableSize)
    .sort((one, other) => one.broken - other.broken);
  return (whole ?? nearlyWhole ?? small[0])?.size ?? smallestSize;
}
