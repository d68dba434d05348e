import type { AlignedPart } from '../phonics/align.ts';
import type { Phonics } from '../phonics/phonics.ts';
import type { TaughtSpelling } from './taught.ts';

/**
 * A quick test whether a part of a word may be covered by some of the given spellings, alone or within a chunk. It lets
 * through too much and never too little: a vowel letter without stress and the n of *uncle* may be read by their plain
 * sounds, and accents are merged.
 */
export function mayCover(
  spellings: readonly TaughtSpelling[],
  phonics: Pick<Phonics, 'soundClass'>,
): (part: AlignedPart) => boolean {
  const letters = new Set<string>();
  const correspondences = new Set<string>();
  for (const step of spellings.flatMap(({ pattern }) => pattern)) {
    letters.add(step.letters);
    correspondences.add(`${step.letters} ${phonics.soundClass(step.letters, step.sounds)}`);
  }
  return (part) =>
    correspondences.has(`${part.letters} ${phonics.soundClass(part.letters, part.sounds)}`) ||
    (letters.has(part.letters) && /^[aeiouyn]$/.test(part.letters) && part.stress !== 1);
}
