/** One data file of several named sections, so that there is one file to find, to read and to hand to a worker. */
export interface Sections {
  /** The bytes of a section, a view and not a copy; empty when the file has none of that name. */
  bytes(name: string): Uint8Array;
  /** A section as text; ASCII only. */
  text(name: string): string;
}

/** The file's first line. */
export const sectionsMagic = 'battledore words 2';

/**
 * Opens a data file: the first line, a line `name length` for each section, an empty line, the sections' bytes in the same
 * order. Throws when it is not one of this version.
 */
export function openSections(file: Uint8Array): Sections {
  const places = new Map<string, { readonly start: number; readonly length: number }>();
  const lines: string[] = [];
  let at = 0;
  while (at < file.length && lines[lines.length - 1] !== '') {
    const end = file.indexOf(0x0a, at);
    if (end < 0 || (lines.length === 0 && end !== sectionsMagic.length)) break;
    lines.push(asciiOf(file, at, end));
    at = end + 1;
  }
  if (lines[0] !== sectionsMagic) throw new Error('This is not a Battledore data file of this version.');
  for (const line of lines.slice(1, -1)) {
    const [name = '', length = '0'] = line.split(' ');
    places.set(name, { start: at, length: Number(length) });
    at += Number(length);
  }
  const bytes = (name: string): Uint8Array => {
    const place = places.get(name);
    return place ? file.subarray(place.start, place.start + place.length) : file.subarray(0, 0);
  };
  return {
    bytes,
    text: (name) => {
      const section = bytes(name);
      return asciiOf(section, 0, section.length);
    },
  };
}

/** Bytes as text, one character a byte. */
export function asciiOf(bytes: Uint8Array, start: number, end: number): string {
  let text = '';
  if (end - start < 24) {
    // Most are a few letters of a word, for which a view and a call with many arguments are slow.
    for (let at = start; at < end; at++) text += String.fromCharCode(bytes[at] ?? 0);
    return text;
  }
  for (let at = start; at < end; at += 8192) {
    text += String.fromCharCode(...bytes.subarray(at, Math.min(end, at + 8192)));
  }
  return text;
}
