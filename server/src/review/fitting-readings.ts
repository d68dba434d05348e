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

/** Which meaning a heteronym has where it stands, counted from 0; undefined for a word with one meaning. */
export function senseAt({ words, index }: PlaceInSentence, heteronyms: Heteronyms): number | undefined {
  const word = words[index];
  if (word === undefined || heteronyms.sensesOf(word.text) === undefined) return undefined;
  return heteronyms.choose(
    words.map(({ text }) => text),
    index,
  );
}

/**
 * Those of a word's readings that a reader would give it in a sense, the likeliest first; empty only when there are none at
 * all.
 *
 * Pronunciations that differ by speaker or by stress in the sentence (*a*, *again*) all fit. Of a heteronym (*read*,
 * *wind*) only the reading that its neighbours call for fits, the likelier one where they do not tell.
 */
export function fittingReadings(readings: readonly Reading[], sense: number | undefined): readonly Reading[] {
  const chosen = sense === undefined ? undefined : readings[sense];
  return chosen === undefined ? readings : [chosen];
}
