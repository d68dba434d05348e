import { mkdirSync, writeFileSync } from 'node:fs';
import { encodeLexicon } from '../src/phonics/lexicon.ts';
import { alignDictionary } from './aligned-words.ts';
import { tableText } from './sources.ts';

/**
 * Writes `server/generated/lexicon.bin` and the list of pronunciations that could not be aligned.
 * The same sources give the same bytes; CI runs it and compares.
 */
/** The tables that travel in the lexicon's file. */
const tablesAboard = ['spellings', 'sound-classes', 'heteronyms', 'heteronym-rules', 'word-classes'];
const generated = new URL('../generated/', import.meta.url);
const { entries, failures } = alignDictionary();
mkdirSync(generated, { recursive: true });
const bytes = encodeLexicon(entries, Object.fromEntries(tablesAboard.map((name) => [name, tableText(name)])));
writeFileSync(new URL('lexicon.bin', generated), bytes);
writeFileSync(new URL('not-aligned.txt', generated), `${failures.join('\n')}\n`);
const readings = entries.reduce((sum, entry) => sum + entry.readings.length, 0);
console.log(
  `${entries.length} words, ${readings} readings, ${failures.length} not aligned, ${(bytes.length / 1000).toFixed(0)} kB`,
);
