import { sectionsMagic } from '../src/phonics/sections.ts';
import { asciiBytes } from './encode-lexicon.ts';

/** A data file of sections, as `openSections` reads it. */
export function joinedSections(parts: Readonly<Record<string, Uint8Array>>): Uint8Array {
  const named = Object.entries(parts);
  const head = [sectionsMagic, ...named.map(([name, bytes]) => `${name} ${bytes.length}`), '', ''].join('\n');
  return Buffer.concat([asciiBytes(head), ...named.map(([, bytes]) => bytes)]);
}

/** A table without the lines that explain it. */
export function withoutNotes(table: string): string {
  return table
    .split('\n')
    .filter((line) => !line.startsWith('#'))
    .join('\n');
}
