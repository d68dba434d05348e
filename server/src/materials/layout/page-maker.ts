import type { DrawnMark, DrawnPage, Ink } from '../pdf/drawing.ts';
import type { StructureNode } from '../pdf/structure.ts';
import { type Typeface, widthOf } from '../pdf/typeface.ts';
import type { Picture } from '../pictures/picture.ts';
import type { Size } from './paper.ts';

/** The inks of all materials: they keep their meaning on a printer without colour. */
export const inks = {
  text: [0.1, 0.1, 0.1],
  quiet: [0.34, 0.34, 0.34],
  line: [0.55, 0.55, 0.55],
  faint: [0.7, 0.7, 0.7],
  ground: [0.95, 0.95, 0.95],
} as const satisfies Readonly<Record<string, Ink>>;

/** What a line of text may be given beside its place. */
export interface LineLook {
  readonly face: Typeface;
  readonly size: number;
  readonly ink?: Ink;
  readonly wordSpace?: number;
  /** Where `x` is on the line; at its start unless said otherwise. */
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly node?: StructureNode | undefined;
}

/** A page while it is drawn. Lengths are in points from the upper left corner. */
export class PageMaker implements DrawnPage {
  readonly width: number;
  readonly height: number;
  readonly marks: DrawnMark[] = [];

  constructor({ width, height }: Size) {
    this.width = width;
    this.height = height;
  }

  /** Sets a line of text on the base line `y`; gives its width. */
  text(text: string, x: number, y: number, look: LineLook): number {
    const { face, size, ink = inks.text, wordSpace = 1, anchor = 'start', node } = look;
    const width = widthOf(text, face, size, wordSpace);
    const start = anchor === 'start' ? x : anchor === 'middle' ? x - width / 2 : x - width;
    if (text !== '') {
      this.marks.push({ kind: 'text', text, face, size, x: start, y, ink, wordSpace, ...nodeOf(node) });
    }
    return width;
  }

  /** Draws a rectangle. */
  box(
    place: Size & { readonly x: number; readonly y: number },
    look: {
      readonly fill?: Ink;
      readonly stroke?: Ink;
      readonly lineWidth?: number;
      readonly radius?: number;
      readonly dash?: readonly number[];
      readonly node?: StructureNode | undefined;
    },
  ): void {
    const { lineWidth = 1, radius = 0, dash = [], node, ...paint } = look;
    this.marks.push({ kind: 'box', ...place, ...paint, lineWidth, radius, dash, ...nodeOf(node) });
  }

  /** Draws a straight line. */
  line(
    from: readonly [number, number],
    to: readonly [number, number],
    look: {
      readonly ink?: Ink;
      readonly lineWidth?: number;
      readonly dash?: readonly number[];
      readonly node?: StructureNode | undefined;
    } = {},
  ): void {
    const { ink = inks.line, lineWidth = 0.75, dash = [], node } = look;
    this.marks.push({ kind: 'line', from, to, ink, lineWidth, dash, ...nodeOf(node) });
  }

  /** Puts a picture into the middle of a place, as large as fits with its own proportions. */
  picture(
    picture: Picture,
    place: Size & { readonly x: number; readonly y: number },
    node?: StructureNode,
  ): void {
    const { width, height } = fitted(picture, place);
    const x = place.x + (place.width - width) / 2;
    const y = place.y + (place.height - height) / 2;
    this.marks.push({ kind: 'picture', picture, x, y, width, height, ...nodeOf(node) });
  }
}

/** The largest size with the proportions of `picture` within `place`. */
export function fitted(picture: Size, place: Size): Size {
  const scale = Math.min(place.width / picture.width, place.height / picture.height);
  return { width: picture.width * scale, height: picture.height * scale };
}

function nodeOf(node: StructureNode | undefined): { node?: StructureNode } {
  return node === undefined ? {} : { node };
}
