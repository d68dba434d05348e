import type { Picture } from '../pictures/picture.ts';
import type { StructureNode } from './structure.ts';
import type { Typeface } from './typeface.ts';

/** A colour: red, green and blue from 0 to 1. */
export type Ink = readonly [red: number, green: number, blue: number];

/** A line of text. Lengths are in points (1/72 inch); `x` and `y` run from the upper left corner of the page. */
export interface TextMark {
  readonly kind: 'text';
  readonly text: string;
  readonly face: Typeface;
  readonly size: number;
  /** Where the line begins. */
  readonly x: number;
  /** Where its letters stand. */
  readonly y: number;
  readonly ink: Ink;
  /** Each space is this many times as wide as the face has it. */
  readonly wordSpace: number;
  /** What it belongs to; decoration when absent. */
  readonly node?: StructureNode;
}

/** A rectangle, with round corners where `radius` says so. */
export interface BoxMark {
  readonly kind: 'box';
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly radius: number;
  readonly fill?: Ink;
  readonly stroke?: Ink;
  readonly lineWidth: number;
  readonly dash: readonly number[];
  readonly node?: StructureNode;
}

/** A straight line. */
export interface LineMark {
  readonly kind: 'line';
  readonly from: readonly [x: number, y: number];
  readonly to: readonly [x: number, y: number];
  readonly ink: Ink;
  readonly lineWidth: number;
  readonly dash: readonly number[];
  readonly node?: StructureNode;
}

/** A picture, scaled to fill its place. */
export interface PictureMark {
  readonly kind: 'picture';
  readonly picture: Picture;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly node?: StructureNode;
}

/** Something on a page. */
export type DrawnMark = TextMark | BoxMark | LineMark | PictureMark;

/** A page as its reader sees it, whatever sheet it is printed on. An empty one has no marks. */
export interface DrawnPage {
  readonly width: number;
  readonly height: number;
  readonly marks: readonly DrawnMark[];
}

/** One side of a sheet of paper with the pages that are printed on it. */
export interface Side {
  readonly width: number;
  readonly height: number;
  readonly pages: readonly { readonly page: DrawnPage; readonly x: number; readonly y: number }[];
}

/** All that becomes one PDF. */
export interface DrawnDocument {
  readonly title: string;
  readonly sides: readonly Side[];
  /** The root of the structure. */
  readonly root: StructureNode;
  /** Entries of the reader's list of contents, each leading to a side, counted from 0. */
  readonly bookmarks: readonly { readonly title: string; readonly side: number }[];
  /** True when the paper is turned over its short edge. */
  readonly turnsOverShortEdge: boolean;
}
