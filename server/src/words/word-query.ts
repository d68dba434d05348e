import type { Phoneme } from '../phonics/phoneme.ts';
import type { TaughtSpelling } from '../sequence/taught.ts';

/** Where in a word something stands; the middle is all that is neither its first nor its last grapheme. */
export const wordPlaces = ['start', 'middle', 'end'] as const;
/** One of the places of a word. */
export type WordPlace = (typeof wordPlaces)[number];

/** A number from `least` to `most`, both included. */
export interface NumberRange {
  readonly least: number;
  readonly most: number;
}

/** Letters that a word is to hold as whole graphemes: `igh`, `a_e`, `st`; with a spelling's sounds where they matter. */
export interface WantedSpelling {
  /** As in `X as in W`: one grapheme or several side by side, a split one with a low line. */
  readonly letters: string;
  /** What the graphemes say, when only these sounds are wanted. */
  readonly pattern?: TaughtSpelling['pattern'];
}

/** What words are wanted. What is left out does not matter. */
export interface WordQuery {
  readonly spelling?: WantedSpelling;
  readonly sound?: Phoneme;
  /** Where the spelling, or else the sound, is to stand. */
  readonly place?: WordPlace;
  /** How many sounds the word has. */
  readonly sounds?: NumberRange;
  readonly syllables?: NumberRange;
  /** A bit of `partOfSpeech`; a form such as *cats* is what its base is. */
  readonly partOfSpeech?: number;
  /** True for words that use a spelling, or are a high-frequency word, first taught in the lesson. */
  readonly isNew?: boolean;
  /** Words of a text, in lower case with straight apostrophes: only those, or only others. */
  readonly used?: { readonly words: ReadonlySet<string>; readonly isUsed: boolean };
  /** True to leave out forms with endings (*cats*, *jumped*). */
  readonly baseFormsOnly?: boolean;
  /** True for rare words too, which otherwise are left out; those that children know are never rare. */
  readonly includesRare?: boolean;
  /** How many words, at most; all when left out. */
  readonly limit?: number;
}
