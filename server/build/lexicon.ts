import { mkdirSync, writeFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { sectionsMagic } from '../src/phonics/sections.ts';
import { alignDictionary } from './aligned-words.ts';
import { asciiBytes, encodeLexicon } from './encode-lexicon.ts';
import { modelOfEntries } from './letter-to-sound/lexicon-model.ts';
import { tableText } from './sources.ts';

/**
 * Writes `server/generated/words.bin` (the lexicon, the letter-to-sound model trained on it, the tables that are needed at
 * run time) and the list of pronunciations that could not be aligned. The same sources give the same bytes; CI runs it
 * and compares.
 */
const tablesAboard = [
  'spellings',
  'sound-classes',
  'heteronyms',
  'heteronym-rules',
  'word-classes',
  'unfit-words',
  'young-words',
] as const;

const { entries, failures } = alignDictionary();
const sections: Readonly<Record<string, Uint8Array>> = {
  ...encodeLexicon(entries),
  'letter-to-sound': modelOfEntries(entries),
  ...Object.fromEntries(tablesAboard.map((name) => [name, asciiBytes(withoutNotes(tableText(name)))])),
};
const generated = new URL('../generated/', import.meta.url);
mkdirSync(generated, { recursive: true });
const bytes = joined(sections);
writeFileSync(new URL('words.bin', generated), bytes);
writeFileSync(new URL('not-aligned.txt', generated), `${failures.join('\n')}\n`);
const readings = entries.reduce((sum, entry) => sum + entry.readings.length, 0);
console.log(`${entries.length} words, ${readings} readings, ${failures.length} not aligned`);
for (const [name, section] of Object.entries(sections))
  console.log(`${name.padEnd(16)} ${kilobytes(section.length)}`);
console.log(
  `words.bin        ${kilobytes(bytes.length)}, compressed ${kilobytes(gzipSync(bytes, { level: 9 }).length)}`,
);

function joined(parts: Readonly<Record<string, Uint8Array>>): Uint8Array {
  const names = Object.keys(parts);
  const head = [sectionsMagic, ...names.map((name) => `${name} ${parts[name]?.length ?? 0}`), '', ''].join(
    '\n',
  );
  return Buffer.concat([asciiBytes(head), ...names.map((name) => parts[name] ?? new Uint8Array())]);
}

function withoutNotes(table: string): string {
  return table
    .split('\n')
    .filter((line) => !line.startsWith('#'))
    .join('\n');
}

function kilobytes(count: number): string {
  return `${(count / 1000).toFixed(0).padStart(5)} kB`;
}
