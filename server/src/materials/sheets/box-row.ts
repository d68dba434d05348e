import { inks, type PageMaker } from '../layout/page-maker.ts';
import type { StructureNode } from '../pdf/structure.ts';
import { type Typeface, widthOf } from '../pdf/typeface.ts';
import type { SoundBox } from './sound-boxes.ts';

/** A row of boxes, one a sound; a grapheme with two sounds has a broken line between its two, late letters have no box. */
export interface BoxRow {
  readonly x: number;
  readonly y: number;
  /** Side of a box, in points. */
  readonly side: number;
  readonly face: Typeface;
  readonly size: number;
  readonly node: StructureNode;
}

/** The boxes of a row and the letters between them. */
type Boxes = readonly Pick<SoundBox, 'letters' | 'sounds'>[];

/**
 * Draws a row of boxes, each with its letters unless `isEmpty` says that the child writes them: then late letters get a line
 * to stand on. Gives its width.
 */
export function drawBoxes(
  page: PageMaker,
  boxes: Boxes,
  { x, y, side, face, size, node }: BoxRow,
  isEmpty: (index: number) => boolean,
): number {
  let left = x;
  for (const [index, { letters, sounds }] of boxes.entries()) {
    const width = boxWidth({ letters, sounds }, side, face, size);
    if (sounds > 0) page.box({ x: left, y, width, height: side }, { stroke: inks.quiet, lineWidth: 1, node });
    else if (isEmpty(index)) {
      const line = y + side / 2 + 0.4 * size;
      page.line([left + 4, line], [left + width - 2, line], { ink: inks.quiet, lineWidth: 1, node });
    }
    for (let sound = 1; sound < sounds; sound++) {
      const across = left + (sound * width) / sounds;
      page.line([across, y], [across, y + side], { ink: inks.line, lineWidth: 1, dash: [2, 3], node });
    }
    if (!isEmpty(index)) {
      page.text(letters, left + width / 2, y + side / 2 + 0.26 * size, {
        face,
        size,
        anchor: 'middle',
        node,
      });
    }
    left += width;
  }
  return left - x;
}

/** Width of a row of boxes in points. */
export function widthOfBoxes(boxes: Boxes, side: number, face: Typeface, size: number): number {
  return boxes.reduce((sum, box) => sum + boxWidth(box, side, face, size), 0);
}

function boxWidth({ letters, sounds }: Boxes[number], side: number, face: Typeface, size: number): number {
  return Math.max(side * (sounds > 0 ? sounds : 0.6), widthOf(letters, face, size) + 0.6 * size);
}
