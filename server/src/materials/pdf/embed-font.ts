import type { FontFile } from './font-file.ts';
import { fontProgram } from './font-program.ts';
import type { PdfFile } from './pdf-file.ts';
import { bytesOf, hex, pdfNumber, pdfNumbers } from './serialize.ts';

/** A font that the content calls by name, with the glyphs it is used for and the character that each stands for. */
export interface UsedFont {
  readonly name: string;
  readonly object: number;
  readonly characters: Map<number, number>;
}

/** Puts a font in, with the outlines that are used and the way from its glyphs back to characters. */
export function embedFont(font: FontFile, { object, characters }: UsedFont, file: PdfFile): void {
  const glyphs = [...characters.keys()].sort((one, other) => one - other);
  const program = fontProgram(font, new Set(glyphs));
  const programObject = file.addStream(`/Length1 ${program.length}`, program);
  const scale = 1000 / font.unitsPerEm;
  const name = `${partTag(glyphs)}+${font.name}`;
  const descriptor = file.add(
    `<< /Type /FontDescriptor /FontName /${name} /Flags 4 /FontBBox [${pdfNumbers(...font.box.map((value) => value * scale))}] /ItalicAngle 0 /Ascent ${pdfNumber(font.ascent * scale)} /Descent ${pdfNumber(font.descent * scale)} /CapHeight ${pdfNumber(font.capHeight * scale)} /StemV 80 /FontFile2 ${programObject} 0 R >>`,
  );
  const widths = glyphs.map((glyph) => `${glyph} [${pdfNumber(font.advanceOf(glyph) * scale)}]`);
  const descendant = file.add(
    `<< /Type /Font /Subtype /CIDFontType2 /BaseFont /${name} /CIDSystemInfo << /Registry (Adobe) /Ordering (Identity) /Supplement 0 >> /FontDescriptor ${descriptor} 0 R /CIDToGIDMap /Identity /DW 0 /W [${widths.join(' ')}] >>`,
  );
  const toUnicode = file.addStream('', bytesOf(characterMap(characters, glyphs)));
  file.add(
    `<< /Type /Font /Subtype /Type0 /BaseFont /${name} /Encoding /Identity-H /DescendantFonts [${descendant} 0 R] /ToUnicode ${toUnicode} 0 R >>`,
    object,
  );
}

/** The six letters that mark a font of which only a part is there, made of what is there. */
function partTag(glyphs: readonly number[]): string {
  let sum = 7;
  for (const glyph of glyphs) sum = (sum * 31 + glyph) % 308_915_776;
  let tag = '';
  for (let letter = 0; letter < 6; letter++) {
    tag += String.fromCharCode(65 + (sum % 26));
    sum = Math.floor(sum / 26);
  }
  return tag;
}

function characterMap(characters: ReadonlyMap<number, number>, glyphs: readonly number[]): string {
  const rows = glyphs.map((glyph) => `<${hex(glyph, 4)}> <${utf16(characters.get(glyph) ?? 0xfffd)}>`);
  const blocks: string[] = [];
  for (let at = 0; at < rows.length; at += 100) {
    const block = rows.slice(at, at + 100);
    blocks.push(`${block.length} beginbfchar\n${block.join('\n')}\nendbfchar`);
  }
  return `/CIDInit /ProcSet findresource begin
12 dict begin
begincmap
/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def
/CMapName /Adobe-Identity-UCS def
/CMapType 2 def
1 begincodespacerange
<0000> <FFFF>
endcodespacerange
${blocks.join('\n')}
endcmap
CMapName currentdict /CMap defineresource pop
end
end`;
}

function utf16(codePoint: number): string {
  const character = String.fromCodePoint(codePoint);
  return Array.from({ length: character.length }, (_, at) => hex(character.charCodeAt(at), 4)).join('');
}
