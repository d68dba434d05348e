import type { Snapshot } from './documents.ts';

/** A line longer than this, in UTF-16 code units, was not written by hand, and looking into it would take long. */
export const longestLine = 2000;

/** The lines of a document up to an offset, the last one as far as the offset. */
export function linesBefore({ document }: Snapshot, offset: number): readonly string[] {
  return document
    .getText()
    .slice(0, offset)
    .split(/\r\n|\r|\n/);
}
