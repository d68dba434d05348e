import type { Phoneme, Stress } from './phoneme.ts';

/** Where a reading comes from; see "What is computed" in the README. */
export type ReadingSource = 'lexicon' | 'ending' | 'compound' | 'author' | 'rule';

/** A grapheme of a word with the sounds it says there. */
export interface Part {
  /** The letters in lower case; a split grapheme is named with a low line (`a_e`). */
  readonly letters: string;
  /** The sounds the letters say; empty for a silent letter that stands alone. */
  readonly sounds: readonly Phoneme[];
  /** Where the letters stand in the word, UTF-16 offsets, one pair a run of letters. */
  readonly spans: readonly (readonly [start: number, end: number])[];
  /** The stress of the vowel among the sounds; absent when there is none. */
  readonly stress?: Stress;
}

/** The endings a sequence can open. */
export const endings = [
  's',
  'es',
  'ed',
  'ing',
  'er',
  'est',
  'y',
  'ly',
  "'s",
  "n't",
  "'ll",
  "'re",
  "'ve",
  "'d",
  "'m",
  'ful',
  'less',
  'ness',
  'un',
  're',
] as const;

/** An ending (or one of the two prefixes `un`, `re`) as a sequence names it. */
export type Ending = (typeof endings)[number];

/** How a reading is made of a base word and an ending, where it is. */
export interface Inflection {
  readonly ending: Ending;
  /** The base word in lower case: `hop` for *hopped*, `bake` for *baking*, `cry` for *cried*. */
  readonly base: string;
  /** The base word's own reading. */
  readonly reading: Reading;
  /** How many parts of the whole word's reading belong to the base; the rest are the ending's. */
  readonly baseParts: number;
}

/** A syllable as a dictionary divides the word. */
export interface Syllable {
  readonly text: string;
  readonly stress: Stress;
}

/** One pronunciation of a word, aligned grapheme by grapheme. Immutable and shared between reviews. */
export interface Reading {
  readonly source: ReadingSource;
  /** In the order of their first letter; together they cover every letter of the word. */
  readonly parts: readonly Part[];
  readonly syllables: readonly Syllable[];
  readonly inflection?: Inflection;
  /** The two words that a compound is put together from: `school`, `house`. */
  readonly compound?: readonly [first: string, second: string];
  /** The word that is drawn out here, in lower case: `no` of *Nooo*. */
  readonly drawnOutOf?: string;
}
