import type { Reading } from '../phonics/reading.ts';
import type { Word } from '../story/story.ts';
import { foldedWord } from '../text/folded-word.ts';
import { likelierReading } from './heteronyms.ts';

/** A word with its neighbours. */
export interface PlaceInSentence {
  /** The words of the sentence or heading. */
  readonly words: readonly Word[];
  /** Which of them is meant, from 0. */
  readonly index: number;
}

/**
 * The readings a reader would give a word where it stands, the likeliest first; empty only when there are none at all.
 *
 * Pronunciations that differ by speaker or by stress in the sentence (*a*, *again*) all fit. Of a heteronym (*read*,
 * *wind*) only the likelier reading fits: the neighbours, which would tell, are not yet looked at.
 */
export function fittingReadings(
  readings: readonly Reading[],
  { words, index }: PlaceInSentence,
): readonly Reading[] {
  const word = words[index];
  const likelier = word === undefined ? undefined : likelierReading(foldedWord(word.text), readings);
  return likelier === undefined ? readings : [likelier];
}
