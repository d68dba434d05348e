import type { Phonics } from '../phonics/phonics.ts';
import type { Teaching } from '../sequence/teaching.ts';
import { createWordFinder, type WordFinder } from './find-words.ts';

/** The word finder of each sequence in use; made when it is first asked for, and gone with its sequence. */
export type WordFinders = (teaching: Teaching) => WordFinder;

/** Word finders that share a phonics. */
export function createWordFinders(phonics: Phonics): WordFinders {
  const finders = new WeakMap<Teaching, WordFinder>();
  return (teaching) => {
    const finder = finders.get(teaching) ?? createWordFinder(teaching, phonics);
    finders.set(teaching, finder);
    return finder;
  };
}
