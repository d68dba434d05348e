import type { FontFile } from './font-file.ts';

/** A face to set text in: font files that complete each other, the first with the common letters. */
export interface Typeface {
  readonly files: readonly FontFile[];
}

/** A stretch of text that one font file sets. */
export interface GlyphRun {
  readonly font: FontFile;
  readonly glyphs: readonly { readonly glyph: number; readonly codePoint: number }[];
}

/** Cuts a text into runs by the file that has each character; a character that none has is the first file's empty box. */
export function glyphRuns(text: string, { files }: Typeface): readonly GlyphRun[] {
  const runs: { font: FontFile; glyphs: { glyph: number; codePoint: number }[] }[] = [];
  for (const character of text) {
    const codePoint = character.codePointAt(0) ?? 0;
    const font = files.find((file) => file.glyphOf(codePoint) !== 0) ?? files[0];
    if (font === undefined) return [];
    const glyph = { glyph: font.glyphOf(codePoint), codePoint };
    const last = runs.at(-1);
    if (last?.font === font) last.glyphs.push(glyph);
    else runs.push({ font, glyphs: [glyph] });
  }
  return runs;
}

/** The characters of a text that no file of the face has, each once. */
export function lackedCharacters(text: string, { files }: Typeface): readonly string[] {
  return [...new Set(text)].filter((character) => {
    const codePoint = character.codePointAt(0) ?? 0;
    return !files.some((file) => file.glyphOf(codePoint) !== 0);
  });
}

/** Width of a text in points at a size in points; each space counts `wordSpace` times its own width. */
export function widthOf(text: string, face: Typeface, size: number, wordSpace = 1): number {
  let width = 0;
  for (const { font, glyphs } of glyphRuns(text, face)) {
    for (const { glyph, codePoint } of glyphs) {
      width += (font.advanceOf(glyph) / font.unitsPerEm) * (codePoint === 0x20 ? wordSpace : 1);
    }
  }
  return width * size;
}
