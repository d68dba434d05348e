import { type FontFile, readWoff } from '../pdf/font-file.ts';
import type { Typeface } from '../pdf/typeface.ts';

/** The files that the materials are set in: Andika, each weight in two parts. Their names are those of the package. */
export const fontFiles = {
  regular: 'andika-latin-400-normal.woff',
  regularExtended: 'andika-latin-ext-400-normal.woff',
  bold: 'andika-latin-700-normal.woff',
  boldExtended: 'andika-latin-ext-700-normal.woff',
} as const;

/** The bytes of the font files. */
export type FontBytes = Readonly<Record<keyof typeof fontFiles, Uint8Array>>;

/** The two faces of the materials. */
export interface Faces {
  readonly regular: Typeface;
  readonly bold: Typeface;
}

/** Reads the font files; throws when one is not a font, which is a fault of the package. */
export function readFaces(bytes: FontBytes): Faces {
  return {
    regular: typeface(readWoff(bytes.regular, 'Andika'), readWoff(bytes.regularExtended, 'Andika-Extended')),
    bold: typeface(readWoff(bytes.bold, 'Andika-Bold'), readWoff(bytes.boldExtended, 'Andika-Bold-Extended')),
  };
}

function typeface(...files: readonly FontFile[]): Typeface {
  return { files };
}
