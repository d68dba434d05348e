/** The files that the materials are set in: Andika, each weight in two parts. Their names are those of the package. */
export const fontFiles = {
  regular: 'andika-latin-400-normal.woff',
  regularExtended: 'andika-latin-ext-400-normal.woff',
  bold: 'andika-latin-700-normal.woff',
  boldExtended: 'andika-latin-ext-700-normal.woff',
} as const;

/** The bytes of the font files. */
export type FontBytes = Readonly<Record<keyof typeof fontFiles, Uint8Array>>;
