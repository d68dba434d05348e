import { readFileSync } from 'node:fs';
import { type FontBytes, fontFiles } from '../../server/src/materials/layout/font-files.ts';

const font = (name: string): Uint8Array =>
  readFileSync(new URL(`../../node_modules/@fontsource/andika/files/${name}`, import.meta.url));

/** The fonts of the package. */
export const packageFonts: FontBytes = {
  regular: font(fontFiles.regular),
  regularExtended: font(fontFiles.regularExtended),
  bold: font(fontFiles.bold),
  boldExtended: font(fontFiles.boldExtended),
};
