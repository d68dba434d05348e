/** The papers there are. */
export const papers = ['letter', 'a4'] as const;
/** A size of paper. */
export type Paper = (typeof papers)[number];

/** The ways to bring a book onto paper: a page a sheet, or two pages a side of a sheet that is folded. */
export const layouts = ['page', 'booklet'] as const;
/** A way to bring a book onto paper. */
export type Layout = (typeof layouts)[number];

/** Width and height in points (1/72 inch). */
export interface Size {
  readonly width: number;
  readonly height: number;
}

const upright: Readonly<Record<Paper, Size>> = {
  letter: { width: 612, height: 792 },
  a4: { width: 595.276, height: 841.89 },
};

/** A sheet as it lies in the printer: upright for single pages, on its long side for a booklet. */
export function sheetSize(paper: Paper, layout: Layout): Size {
  const { width, height } = upright[paper];
  return layout === 'page' ? { width, height } : { width: height, height: width };
}

/** A page as its reader holds it: the sheet, or half of one. */
export function pageSize(paper: Paper, layout: Layout): Size {
  const { width, height } = sheetSize(paper, layout);
  return layout === 'page' ? { width, height } : { width: width / 2, height };
}
