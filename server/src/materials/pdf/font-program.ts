import { type FontFile, viewOf } from './font-file.ts';

/** The tables that a PDF reader needs of a TrueType font whose glyphs are called by number. */
const neededTables = ['cvt ', 'fpgm', 'glyf', 'head', 'hhea', 'hmtx', 'loca', 'maxp', 'prep'] as const;

/**
 * The font as a document carries it: with the outlines of the given glyphs, and of those they are put together from,
 * and no others. Glyphs keep their numbers.
 */
export function fontProgram(font: FontFile, glyphs: ReadonlySet<number>): Uint8Array {
  const outlines = keptOutlines(font, glyphs);
  const tables = neededTables.flatMap((tag): readonly (readonly [string, Uint8Array])[] => {
    const table = tag === 'glyf' ? outlines.glyf : tag === 'loca' ? outlines.loca : font.tables.get(tag);
    if (table === undefined) return [];
    return [[tag, tag === 'head' ? withLongOffsets(table) : table]];
  });
  return fileOf(tables);
}

function keptOutlines(font: FontFile, glyphs: ReadonlySet<number>): { glyf: Uint8Array; loca: Uint8Array } {
  const glyf = font.tables.get('glyf') ?? new Uint8Array();
  const loca = viewOf(font.tables.get('loca') ?? new Uint8Array());
  const isLong = viewOf(font.tables.get('head') ?? new Uint8Array(54)).getInt16(50) === 1;
  const count = loca.byteLength / (isLong ? 4 : 2) - 1;
  const offset = (glyph: number): number =>
    isLong ? loca.getUint32(4 * glyph) : 2 * loca.getUint16(2 * glyph);
  const outline = (glyph: number): Uint8Array => glyf.subarray(offset(glyph), offset(glyph + 1));

  const kept = new Set<number>([0]);
  const waiting = [...glyphs];
  for (let glyph = waiting.pop(); glyph !== undefined; glyph = waiting.pop()) {
    if (kept.has(glyph) || glyph >= count) continue;
    kept.add(glyph);
    waiting.push(...components(outline(glyph)));
  }

  const offsets = new DataView(new ArrayBuffer(4 * (count + 1)));
  const pieces: Uint8Array[] = [];
  let length = 0;
  for (let glyph = 0; glyph < count; glyph++) {
    offsets.setUint32(4 * glyph, length);
    if (!kept.has(glyph)) continue;
    const piece = outline(glyph);
    pieces.push(piece);
    length += piece.length + (-piece.length & 3);
  }
  offsets.setUint32(4 * count, length);
  const packed = new Uint8Array(length);
  let at = 0;
  for (const piece of pieces) {
    packed.set(piece, at);
    at += piece.length + (-piece.length & 3);
  }
  return { glyf: packed, loca: new Uint8Array(offsets.buffer) };
}

/** The glyphs that a composite glyph is put together from. */
function components(outline: Uint8Array): readonly number[] {
  if (outline.length < 10) return [];
  const view = viewOf(outline);
  if (view.getInt16(0) >= 0) return [];
  const glyphs: number[] = [];
  for (let at = 10, more = true; more; ) {
    const flags = view.getUint16(at);
    glyphs.push(view.getUint16(at + 2));
    at += 4 + (flags & 0x1 ? 4 : 2) + (flags & 0x8 ? 2 : flags & 0x40 ? 4 : flags & 0x80 ? 8 : 0);
    more = (flags & 0x20) !== 0;
  }
  return glyphs;
}

function withLongOffsets(head: Uint8Array): Uint8Array {
  const changed = head.slice();
  viewOf(changed).setInt16(50, 1);
  return changed;
}

function fileOf(tables: readonly (readonly [string, Uint8Array])[]): Uint8Array {
  const headLength = 12 + 16 * tables.length;
  const length = tables.reduce((sum, [, table]) => sum + table.length + (-table.length & 3), headLength);
  const file = new Uint8Array(length);
  const view = viewOf(file);
  const power = Math.floor(Math.log2(tables.length));
  view.setUint32(0, 0x00010000);
  view.setUint16(4, tables.length);
  view.setUint16(6, 16 << power);
  view.setUint16(8, power);
  view.setUint16(10, 16 * tables.length - (16 << power));
  let at = headLength;
  for (const [index, [tag, table]] of tables.entries()) {
    const entry = 12 + 16 * index;
    for (let letter = 0; letter < 4; letter++) file[entry + letter] = tag.charCodeAt(letter);
    file.set(table, at);
    const padded = table.length + (-table.length & 3);
    view.setUint32(entry + 4, sumOf(view, at, padded));
    view.setUint32(entry + 8, at);
    view.setUint32(entry + 12, table.length);
    at += padded;
  }
  return file;
}

function sumOf(view: DataView, start: number, length: number): number {
  let sum = 0;
  for (let at = start; at < start + length; at += 4) sum = (sum + view.getUint32(at)) >>> 0;
  return sum;
}
