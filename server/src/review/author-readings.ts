import type { Phonics } from '../phonics/phonics.ts';
import type { Reading } from '../phonics/reading.ts';

/**
 * The reading of a word that the writer's own cut into graphemes means (`p-l-i-m`, `c-a_e-k`), marked as the author's.
 *
 * The sounds are those of the likeliest known or worked-out reading with the same graphemes. A cut that no such reading
 * has gives nothing: it says too little about the sounds.
 */
export function authorReading(word: string, graphemes: string, phonics: Phonics): Reading | undefined {
  const cut = graphemes
    .toLowerCase()
    .split(/[\s\u2010\u2011-]+/)
    .filter((grapheme) => grapheme !== '');
  const match = phonics
    .readingsOf(word)
    .find(
      ({ parts }) => parts.length === cut.length && parts.every((part, index) => part.letters === cut[index]),
    );
  return match === undefined ? undefined : { ...match, source: 'author' };
}
