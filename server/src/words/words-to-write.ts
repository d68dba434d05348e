import type { Phonics } from '../phonics/phonics.ts';
import type { Review } from '../review/review.ts';
import { foldedWord } from '../text/folded-word.ts';
import type { WordFinder } from './find-words.ts';
import type { FoundWord } from './found-word.ts';

/** A word to go on with, and why it comes where it does in the list. */
export interface WordToWrite {
  readonly found: FoundWord;
  /** A new high-frequency word the story still lacks, one that practises a new spelling, or any other readable word. */
  readonly why: 'still missing' | 'new' | 'readable';
}

/**
 * The readable words of the story's lesson that begin with `prefix`: new high-frequency words that are still missing first,
 * then words that practise a new spelling, then the rest, each the most useful first. At most `limit`, from among
 * the 400 most useful that begin so.
 */
export function wordsToWrite(
  prefix: string,
  review: Review,
  finder: WordFinder,
  phonics: Phonics,
  limit = 60,
): readonly WordToWrite[] {
  const { taught } = review;
  const missing = new Set(
    review.newWordUses
      .filter(({ spans }) => spans.length < taught.targets.repeats)
      .map(({ word }) => foldedWord(word)),
  );
  const words = new Map<string, WordToWrite>();
  const candidates = [
    ...[...missing].filter((word) => word.startsWith(foldedWord(prefix))),
    // A single letter begins thousands of words: the rare ones among them wait for the next letter.
    ...phonics.words
      .startingWith(prefix)
      .slice(0, mostLookedAt)
      .map(({ word }) => word),
  ];
  for (const word of candidates) {
    if (words.has(word)) continue;
    const found = finder.wordAt(taught, word);
    if (found === undefined) continue;
    const why = missing.has(word) ? 'still missing' : found.isNew ? 'new' : 'readable';
    words.set(word, { found, why });
  }
  const order = ['still missing', 'new', 'readable'];
  return [...words.values()]
    .sort((left, right) => order.indexOf(left.why) - order.indexOf(right.why))
    .slice(0, limit);
}

const mostLookedAt = 400;
