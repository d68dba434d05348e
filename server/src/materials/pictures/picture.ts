/** A picture of dots, ready to stand in a PDF. */
export interface RasterPicture {
  readonly kind: 'raster';
  /** Size as it is seen, in dots. */
  readonly width: number;
  readonly height: number;
  /** Entries of the image's dictionary, filter included. */
  readonly entries: string;
  readonly data: Uint8Array;
  /** The transparency as a second, grey image of the same size, compressed. */
  readonly mask?: Uint8Array;
  /** How the unit square of the image is turned to be seen upright: PDF's six numbers. */
  readonly turn: readonly [number, number, number, number, number, number];
}

/** A picture of lines and surfaces. */
export interface VectorPicture {
  readonly kind: 'vector';
  readonly width: number;
  readonly height: number;
  /** PDF drawing operators; `y` runs upwards from the lower left corner. */
  readonly operators: string;
  /** The opacities that the operators call, as `/A50` for 50 percent. */
  readonly opacities: readonly number[];
}

/** A picture that can be printed. */
export type Picture = RasterPicture | VectorPicture;

/** A picture as read, or why it cannot be, to complete a sentence that begins with its name. */
export type PictureRead = Picture | { readonly trouble: string };

/** An image turned by nothing. */
export const upright = [1, 0, 0, 1, 0, 0] as const;

/** The largest side of a picture, in dots. */
export const mostDots = 20_000;
