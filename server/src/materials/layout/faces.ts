import { type FontFile, readWoff } from '../pdf/font-file.ts';
import type { Typeface } from '../pdf/typeface.ts';
import { type FontBytes, fontNames } from './font-files.ts';

/** The two faces of the materials. */
export interface Faces {
  readonly regular: Typeface;
  readonly bold: Typeface;
}

/** Reads the font files; throws when one is not a font, which is a fault of the package. */
export function readFaces(bytes: FontBytes): Faces {
  const file = (name: keyof FontBytes): FontFile => readWoff(bytes[name], fontNames[name]);
  return {
    regular: typeface(file('regular'), file('regularExtended')),
    bold: typeface(file('bold'), file('boldExtended')),
  };
}

function typeface(...files: readonly FontFile[]): Typeface {
  return { files };
}
