import type { Taught } from '../sequence/taught.ts';
import type { WordNote, WordVerdict } from './review.ts';

/** What is remembered of words at one lesson. */
export interface KnownWords {
  /** By the word as written; of a heteronym by the word, a space and the number of its meaning. */
  readonly verdicts: Map<string, WordVerdict>;
  /** What the rules for words say, by the word as written. */
  readonly notes: Map<string, readonly WordNote[]>;
}

/** What is known before any word is judged. */
export function noKnownWords(): KnownWords {
  return { verdicts: new Map(), notes: new Map() };
}

/**
 * Spares reviews the words that an earlier one has judged at the same lesson, in whatever story. Words that a front matter
 * says anything of are not remembered, so that a review is the same with and without it.
 */
export interface WordMemory {
  /** What is remembered at a lesson. The reviews fill it. */
  at(taught: Taught): KnownWords;
}

/** Starts empty; for reviews with one and the same phonics. Forgets a lesson together with its sequence. */
export function createWordMemory(): WordMemory {
  const lessons = new WeakMap<Taught, KnownWords>();
  return {
    at: (taught) => {
      const known = lessons.get(taught);
      // A year of typing leaves the beginnings of words behind.
      if (known !== undefined && known.verdicts.size < mostWords) return known;
      const fresh = noKnownWords();
      lessons.set(taught, fresh);
      return fresh;
    },
  };
}

/** So many different words at one lesson are enough for a long book. */
const mostWords = 20_000;
