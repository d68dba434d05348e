import type { Phoneme, Stress } from './phoneme.ts';
import type { Reading } from './reading.ts';

/** What the rest of the house knows of English spelling and sound. Pure and safe to share. */
export interface Phonics {
  /**
   * Every reading of a word, the likeliest first; never empty for a word that holds a letter a to z.
   * `word` may have capitals and either apostrophe; spans refer to it as given. Cached.
   */
  readingsOf(word: string): readonly Reading[];
  /** True when the word stands in the lexicon itself. */
  isListed(word: string): boolean;
  /** The common key word of a correspondence (`igh`, AY: `light`), where the inventory names one. */
  keyWordFor(letters: string, sounds: readonly Phoneme[]): string | undefined;
  /**
   * Sounds that no verdict tells apart have the same class (the accent noise of the dictionary: AA and AO in short o,
   * the r-vowels, reduced vowels). The class is a name to compare, not to show.
   */
  soundClass(letters: string, sounds: readonly Phoneme[]): string;
  /** The most regular reading of a grapheme by itself; undefined when the inventory does not have it. */
  regularPart(
    letters: string,
  ): { readonly letters: string; readonly sounds: readonly Phoneme[]; readonly stress?: Stress } | undefined;
  /**
   * What each reading of a heteronym means, in the order of `readingsOf`; undefined for a word with one meaning a reading.
   * (*read* now, *read* yesterday; accents of one meaning are not told apart here.)
   */
  sensesOf(word: string): readonly Sense[] | undefined;
}

/** One reading's meaning. */
export interface Sense {
  /** What a sentence is searched for: `verb`, `noun`, `past` … as the table of heteronyms has it. */
  readonly use: string;
  /** A few words that tell the meanings apart. */
  readonly gloss: string;
}
