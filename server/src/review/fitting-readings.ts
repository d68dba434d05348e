import type { Heteronyms } from '../phonics/heteronyms.ts';
import type { Reading } from '../phonics/reading.ts';
import type { Word } from '../story/story.ts';

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
 * *wind*) only the reading that its neighbours call for fits, the likelier one where they do not tell.
 */
export function fittingReadings(
  readings: readonly Reading[],
  { words, index }: PlaceInSentence,
  heteronyms: Heteronyms,
): readonly Reading[] {
  const word = words[index];
  if (word === undefined || heteronyms.sensesOf(word.text) === undefined) return readings;
  const chosen =
    readings[
      heteronyms.choose(
        words.map(({ text }) => text),
        index,
      )
    ];
  return chosen === undefined ? readings : [chosen];
}
