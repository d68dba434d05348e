import type { DrawnPage, Side } from '../pdf/drawing.ts';
import type { Size } from './paper.ts';

/** Each page on a sheet of its own. */
export function singleSides(pages: readonly DrawnPage[]): readonly Side[] {
  return pages.map((page) => ({ width: page.width, height: page.height, pages: [{ page, x: 0, y: 0 }] }));
}

/**
 * Pages on sheets that are printed on both sides, turned over their short edge, laid on each other and folded: two
 * pages a side. Blank pages are added at the end up to a multiple of four. The outermost sheet comes first, each sheet
 * with its outer side before its inner one.
 */
export function bookletSides(pages: readonly DrawnPage[], sheet: Size): readonly Side[] {
  const count = Math.ceil(pages.length / 4) * 4;
  const half = sheet.width / 2;
  const side = (left: number, right: number): Side => ({
    ...sheet,
    pages: [
      { number: left, x: 0 },
      { number: right, x: half },
    ].flatMap(({ number, x }) => {
      const page = pages[number - 1];
      return page === undefined ? [] : [{ page, x, y: 0 }];
    }),
  });
  return Array.from({ length: count / 4 }, (_, index) => [
    side(count - 2 * index, 2 * index + 1),
    side(2 * index + 2, count - 2 * index - 1),
  ]).flat();
}
