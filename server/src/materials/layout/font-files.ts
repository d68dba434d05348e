/** The files that the materials are set in: Andika, each weight in two parts. Their names are those of the package. */
export const fontFiles = {
  regular: 'andika-latin-400-normal.woff',
  regularExtended: 'andika-latin-ext-400-normal.woff',
  bold: 'andika-latin-700-normal.woff',
  boldExtended: 'andika-latin-ext-700-normal.woff',
} as const;

/** The names by which pages call the font files. */
export const fontNames = {
  regular: 'Andika',
  regularExtended: 'Andika-Extended',
  bold: 'Andika-Bold',
  boldExtended: 'Andika-Bold-Extended',
} as const satisfies Readonly<Record<keyof typeof fontFiles, string>>;

/** The bytes of the font files. */
export type FontBytes = Readonly<Record<keyof typeof fontFiles, Uint8Array>>;
