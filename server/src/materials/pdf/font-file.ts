import { unzlibSync } from 'fflate';

/** A font with TrueType outlines, as far as setting and embedding need it. Sizes are in units of the font. */
export interface FontFile {
  /** Without spaces, as PDF names it. */
  readonly name: string;
  readonly unitsPerEm: number;
  readonly ascent: number;
  readonly descent: number;
  readonly capHeight: number;
  readonly xHeight: number;
  readonly box: readonly [left: number, bottom: number, right: number, top: number];
  /** Number of the glyph for a character; 0 when the font lacks it. */
  glyphOf(codePoint: number): number;
  /** How far the pen moves on. */
  advanceOf(glyph: number): number;
  /** The tables of the file by their four-letter names, unpacked. */
  readonly tables: ReadonlyMap<string, Uint8Array>;
}

/**
 * Reads a WOFF 1 file. Throws an `Error` when it is no such file or lacks a table: the fonts are the package's own, so a
 * fault in one is a fault of the package.
 */
export function readWoff(bytes: Uint8Array, name: string): FontFile {
  const tables = unpackedTables(bytes, name);
  const table = (tag: string): DataView => {
    const found = tables.get(tag);
    if (found === undefined) throw new Error(`The font ${name} has no table ${tag}.`);
    return viewOf(found);
  };
  const head = table('head');
  const horizontal = table('hhea');
  const metrics = table('hmtx');
  const os2 = table('OS/2');
  const longMetrics = horizontal.getUint16(34);
  const glyphs = glyphMap(table('cmap'));
  return {
    name,
    unitsPerEm: head.getUint16(18),
    ascent: horizontal.getInt16(4),
    descent: horizontal.getInt16(6),
    capHeight: os2.getInt16(88),
    xHeight: os2.getInt16(86),
    box: [head.getInt16(36), head.getInt16(38), head.getInt16(40), head.getInt16(42)],
    glyphOf: (codePoint) => glyphs.get(codePoint) ?? 0,
    advanceOf: (glyph) => metrics.getUint16(4 * Math.min(glyph, longMetrics - 1)),
    tables,
  };
}

/** A view on exactly the bytes of an array. */
export function viewOf(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}

function unpackedTables(bytes: Uint8Array, name: string): ReadonlyMap<string, Uint8Array> {
  const view = viewOf(bytes);
  if (bytes.length < 44 || view.getUint32(0) !== 0x774f4646) throw new Error(`The font ${name} is not WOFF.`);
  const tables = new Map<string, Uint8Array>();
  for (let index = 0; index < view.getUint16(12); index++) {
    const entry = 44 + 20 * index;
    const tag = String.fromCharCode(...bytes.subarray(entry, entry + 4));
    const start = view.getUint32(entry + 4);
    const packed = bytes.subarray(start, start + view.getUint32(entry + 8));
    const length = view.getUint32(entry + 12);
    tables.set(tag, packed.length === length ? packed : unzlibSync(packed, { out: new Uint8Array(length) }));
  }
  return tables;
}

/** The characters of the font's Unicode table, of the formats 4 and 12. */
function glyphMap(cmap: DataView): ReadonlyMap<number, number> {
  const glyphs = new Map<number, number>();
  for (let index = 0; index < cmap.getUint16(2); index++) {
    const start = cmap.getUint32(4 + 8 * index + 4);
    const format = cmap.getUint16(start);
    if (format === 4) readSegments(cmap, start, glyphs);
    if (format === 12) readGroups(cmap, start, glyphs);
  }
  return glyphs;
}

function readSegments(cmap: DataView, start: number, glyphs: Map<number, number>): void {
  const doubled = cmap.getUint16(start + 6);
  for (let at = 0; at < doubled; at += 2) {
    const last = cmap.getUint16(start + 14 + at);
    const first = cmap.getUint16(start + 16 + doubled + at);
    const delta = cmap.getUint16(start + 16 + 2 * doubled + at);
    const rangeAt = start + 16 + 3 * doubled + at;
    const range = cmap.getUint16(rangeAt);
    for (let code = first; code <= last && code < 0xffff; code++) {
      const listed = range === 0 ? code : cmap.getUint16(rangeAt + range + 2 * (code - first));
      const glyph = listed === 0 ? 0 : (listed + delta) & 0xffff;
      if (glyph !== 0) glyphs.set(code, glyph);
    }
  }
}

function readGroups(cmap: DataView, start: number, glyphs: Map<number, number>): void {
  for (let index = 0; index < cmap.getUint32(start + 12); index++) {
    const group = start + 16 + 12 * index;
    const first = cmap.getUint32(group);
    for (let code = first; code <= cmap.getUint32(group + 4); code++) {
      glyphs.set(code, cmap.getUint32(group + 8) + code - first);
    }
  }
}
