import { readFileSync, writeFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { openLexicon } from '../src/phonics/lexicon.ts';
import { openSections } from '../src/phonics/sections.ts';
import { rowsOf } from '../src/phonics/table.ts';
import { asciiBytes } from './encode-lexicon.ts';
import { encodeMeanings } from './encode-meanings.ts';
import { irregularForms } from './irregular-forms.ts';
import { createMeanings } from './meanings.ts';
import { joinedSections, withoutNotes } from './section-file.ts';
import { tableText } from './sources.ts';
import { speechShares, youngWords } from './speech-shares.ts';
import { readWordNet, speechParts } from './word-net.ts';

/**
 * `npm run meanings`: writes `server/generated/meanings.bin`, which words can stand for which, from WordNet and our table
 * `replacements`. It needs `words.bin`, whose common words are the ones that get a place. The same sources give the same bytes.
 */
const generated = new URL('../generated/', import.meta.url);
const lexicon = openLexicon(openSections(readFileSync(new URL('words.bin', generated))));
const wordNet = readWordNet();
const shareOf = speechShares(wordNet);
const targets = youngWords();
const kinOf = createMeanings(wordNet, targets, shareOf);

/** How many kin a word is given in a part of speech: the rarer it is in print, the less often anybody will ask. */
const mostKin = [5, 5, 8, 14, 18, 24, 24, 24];
const bands = new Map<string, number>();
for (const { word, band } of lexicon.entries()) if (band > 0) bands.set(word, band);
for (const word of targets) bands.set(word, 7);
for (const { word } of rowsOf(tableText('replacements'), ['word'])) bands.set(word, 7);
const entries = [...bands]
  .filter(([word]) => /^[a-z]+$/.test(word) && word.length > 1)
  .map(([word, band]) => ({
    word,
    parts: speechParts.map((part) => ({
      share: shareOf(word, part),
      kin: kinOf(word, part).slice(0, mostKin[band]),
    })),
  }))
  .filter(({ parts }) => parts.some(({ share }) => share > 0));

const sections = {
  ...encodeMeanings(entries),
  'irregular-forms': asciiBytes(irregularForms(new Set(entries.map(({ word }) => word)))),
  replacements: asciiBytes(withoutNotes(tableText('replacements'))),
};
const bytes = joinedSections(sections);
writeFileSync(new URL('meanings.bin', generated), bytes);
console.log(
  `${entries.length} words, ${entries.filter(({ parts }) => parts.some(({ kin }) => kin.length > 0)).length} with kin`,
);
for (const [name, section] of Object.entries(sections)) console.log(`${name} ${section.length} bytes`);
console.log(`meanings.bin ${bytes.length} bytes, compressed ${gzipSync(bytes, { level: 9 }).length}`);
