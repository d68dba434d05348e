import type { PrintProblem } from '../order.ts';
import type { DrawnDocument } from '../pdf/drawing.ts';
import type { Picture, PictureRead } from '../pictures/picture.ts';
import type { Faces } from './faces.ts';

/** What laying out needs and may keep from one time to the next. */
export interface LayoutTools {
  readonly faces: Faces;
  /** Reads the bytes of a picture; the same bytes may be asked for again and again. */
  read(bytes: Uint8Array): PictureRead;
}

/** A document with every mark in its place: what is written as PDF and what a preview shows. */
export interface LaidOut {
  readonly document: DrawnDocument;
  /** In no order. */
  readonly problems: readonly PrintProblem[];
  /** The pictures that were read, each with an address that a story gives it. */
  readonly addresses: ReadonlyMap<Picture, string>;
}
