import type { Reading } from '../phonics/reading.ts';
import type { ListedWord } from '../phonics/word-list.ts';
import type { TaughtSpelling } from '../sequence/taught.ts';

/** A word the children can read at a lesson. */
export interface FoundWord {
  /** As it is written inside a sentence: `I`, `cat`. */
  readonly word: string;
  readonly kind: 'decodable' | 'high-frequency';
  /** The reading it is decodable by, else the likeliest; none for a taught word without sounds. */
  readonly reading?: Reading;
  /** True when it uses a spelling, or is a high-frequency word, first taught in the lesson. */
  readonly isNew: boolean;
  readonly newSpellings: readonly TaughtSpelling[];
  readonly listed: ListedWord;
}

/** The words that were found, the most useful first. */
export interface FoundWords {
  readonly words: readonly FoundWord[];
  /** True when there are more than were asked for. */
  readonly hasMore: boolean;
}
