import type { BoxMark, LineMark } from '../pdf/drawing.ts';

/** A laid-out document as plain data, for a view that draws it. Lengths are in points from a side's upper left corner. */
export interface ShownDocument {
  readonly title: string;
  readonly sides: readonly ShownSide[];
}

/** One side of a sheet of paper. */
export interface ShownSide {
  readonly width: number;
  readonly height: number;
  readonly marks: readonly ShownMark[];
  /** What is read aloud of it, paragraph by paragraph: its text, and what stands in for its figures. */
  readonly reading: readonly string[];
}

/** Something on a side, in the order of drawing. Colours are `#rrggbb`. */
export type ShownMark = ShownText | ShownBox | ShownLine | ShownPicture;

/** A stretch of text in one font. */
export interface ShownText {
  readonly kind: 'text';
  readonly text: string;
  /** One of `fontNames`. */
  readonly font: string;
  readonly size: number;
  /** Where each UTF-16 unit of the text begins. */
  readonly xs: readonly number[];
  /** Where the letters stand. */
  readonly y: number;
  readonly ink: string;
}

/** A rectangle. */
export interface ShownBox extends Omit<BoxMark, 'fill' | 'stroke' | 'node'> {
  readonly fill?: string;
  readonly stroke?: string;
}

/** A straight line. */
export interface ShownLine extends Omit<LineMark, 'ink' | 'node'> {
  readonly ink: string;
}

/** A picture that fills its place. */
export interface ShownPicture {
  readonly kind: 'picture';
  /** The address, as the story writes it. */
  readonly address: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A picture as a page of the web can show it. */
export interface PictureSource {
  readonly type: 'image/png' | 'image/jpeg' | 'image/svg+xml';
  readonly bytes: Uint8Array;
}
