import type { FoundWord } from '../words/found-word.ts';
import type { WordPlace } from '../words/word-query.ts';

/** What makes a word of the word before it: exactly one grapheme, and all others say what they said. */
export interface ChainStep {
  readonly kind: 'change' | 'add' | 'drop';
  /** Where in the word: its first grapheme, its last, or between. */
  readonly place: WordPlace;
  /** The index of the grapheme among the parts of the longer word, from 0. */
  readonly at: number;
  /** The grapheme's letters before; absent when one is added. */
  readonly from?: string;
  /** The grapheme's letters after; absent when one is dropped. */
  readonly to?: string;
}

/** A word of a chain. */
export interface ChainLink {
  readonly found: FoundWord;
  /** How it comes of the word before; absent for the first. */
  readonly step?: ChainStep;
}

/** What chain is wanted. */
export interface ChainWish {
  /** How many words, at least 2. */
  readonly length: number;
  /** The first word, in lower case. */
  readonly start?: string;
  /** The same seed gives the same chain on every machine, another mostly another. A whole number. */
  readonly seed: number;
  /** True to use forms with endings (*cats*, *jumped*) too. */
  readonly includesForms?: boolean;
  /** Asked now and then; once it answers true the search ends with what it has. For hosts with a clock. */
  readonly isCancelled?: () => boolean;
}

/** A chain as long as was wanted, or the longest that was found. */
export interface Chain {
  readonly links: readonly ChainLink[];
  /** True when it is as long as was wanted. */
  readonly isComplete: boolean;
  /** True when every way was tried, so that no longer chain of these words exists. */
  readonly isLongest: boolean;
}
