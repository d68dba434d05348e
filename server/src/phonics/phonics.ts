import type { Heteronyms } from './heteronyms.ts';
import type { Phoneme, Stress } from './phoneme.ts';
import type { Reading } from './reading.ts';
import type { Accent } from './sound-classes.ts';
import type { WordList } from './word-list.ts';

/** A word of more letters (UTF-16 code units) has no readings: English has none, and to guess at one takes memory without end. */
export const longestWord = 60;

/** What the rest of the house knows of English spelling and sound. Pure and safe to share. */
export interface Phonics {
  /**
   * Every reading of a word, the likeliest first; never empty for a word that holds a letter a to z.
   * `word` may have capitals and either apostrophe; spans refer to it as given. Cached.
   */
  readingsOf(word: string): readonly Reading[];
  /** True when the word stands in the lexicon itself. */
  isListed(word: string): boolean;
  /**
   * The common key word of a correspondence (`igh`, AY: `light`), where the inventory names one. `stress` is that of the
   * vowel: *or* says ER in *word* and, weakly, in *doctor*.
   */
  keyWordFor(letters: string, sounds: readonly Phoneme[], stress?: Stress): string | undefined;
  /**
   * Sounds that no verdict tells apart have the same class (the accent noise of the dictionary: AA and AO in short o,
   * the r-vowels, reduced vowels). The class is a name to compare, not to show.
   */
  soundClass(letters: string, sounds: readonly Phoneme[], accent?: Accent): string;
  /** The most regular reading of a grapheme by itself; undefined when the inventory does not have it. */
  regularPart(
    letters: string,
  ): { readonly letters: string; readonly sounds: readonly Phoneme[]; readonly stress?: Stress } | undefined;
  /** The spellings that have a common key word, the most regular first: what a sequence may teach. */
  commonSpellings(): readonly { readonly letters: string; readonly keyWord: string }[];
  /** Words with readings of different meaning, and which of them fits a sentence. */
  readonly heteronyms: Heteronyms;
  /** The words of the lexicon that may be offered to a writer. */
  readonly words: WordList;
}
