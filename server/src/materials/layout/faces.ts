import { type FontFile, readWoff } from '../pdf/font-file.ts';
import type { Typeface } from '../pdf/typeface.ts';
import type { FontBytes } from './font-files.ts';

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
