import { fleschKincaid } from 'flesch-kincaid';
import { spacheFormula } from 'spache-formula';
import type { Reading } from '../phonics/reading.ts';
import type { WordList } from '../phonics/word-list.ts';
import type { Readability } from './series.ts';

/** What the two formulas count. */
export interface TextCounts {
  readonly sentences: number;
  /** Running words. */
  readonly words: number;
  /** Syllables of all running words. */
  readonly syllables: number;
  /** Different words that are not familiar, as Spache counts them: each once, however often it comes. */
  readonly unfamiliarWords: number;
}

/**
 * The grade by Flesch and Kincaid (1975), 0.39 words/sentence + 11.8 syllables/word - 15.59, and by Spache (revised 1974),
 * 0.121 words/sentence + 0.082 percent unfamiliar words + 0.659. Nothing for a text without words.
 */
export function readabilityOf({ sentences, words, syllables, unfamiliarWords }: TextCounts): Readability {
  if (sentences === 0 || words === 0) return {};
  return {
    fleschKincaid: fleschKincaid({ sentence: sentences, word: words, syllable: syllables }),
    spache: spacheFormula({ sentence: sentences, word: words, unfamiliarWord: unfamiliarWords }),
  };
}

/**
 * True for a word that Spache's formula is told is familiar. His own list of 1,041 words is not in this house: a word counts
 * as familiar when `server/data/young-words.tsv` says that six-year-olds know it, or the word it is a form of. Names are
 * familiar to his formula too, which is for the caller to say. Figures of other tools differ for that reason.
 */
export function isFamiliarWord(word: string, reading: Reading | undefined, words: WordList): boolean {
  if (words.find(word)?.isFamiliar === true) return true;
  // The list leaves out contractions and possessives: I'm, we'll, dad's.
  for (let form = reading?.inflection; form !== undefined; form = form.reading.inflection) {
    if (words.find(form.base)?.isFamiliar === true) return true;
  }
  return false;
}
