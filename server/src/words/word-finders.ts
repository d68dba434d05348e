import type { Phonics } from '../phonics/phonics.ts';
import type { Teaching } from '../sequence/teaching.ts';
import { createWordFinder, type WordFinder } from './find-words.ts';
import { indexWords, type WordIndex } from './word-index.ts';

/** The word finder of each sequence in use; made when it is first asked for, and gone with its sequence. */
export type WordFinders = (teaching: Teaching) => WordFinder;

/** Word finders that share a phonics. */
export function createWordFinders(phonics: Phonics): WordFinders {
  const finders = new WeakMap<Teaching, WordFinder>();
  let index: WordIndex | undefined;
  const sharedIndex = (): WordIndex => {
    index ??= indexWords(phonics.words.all());
    return index;
  };
  return (teaching) => {
    const finder = finders.get(teaching) ?? createWordFinder(teaching, phonics, sharedIndex);
    finders.set(teaching, finder);
    return finder;
  };
}
