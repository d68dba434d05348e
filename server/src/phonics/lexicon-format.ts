import type { Change } from './inflection.ts';
import type { Ending } from './reading.ts';

/**
 * The section `lexicon` of the data file. Words are in the order of their letters, in blocks of sixteen, each told as the
 * number of letters it shares with the one before, the number of its own, and these. Then come the length of what
 * follows in two bytes, a byte of flags (band, parts of speech, whether there are seams), a byte for each seam, and the readings:
 * their number of parts (with 128 when there is an ending: a byte for it and one for the base's reading), and the parts as
 * numbers of lines in the section `correspondences`, the most frequent 192 in one byte, the others in two.
 * The section `index` has the offset of each block in four bytes, the lowest first, the section `usefulness` a byte for each
 * word: twice its usefulness as a word to offer, and 1 more when six-year-olds know it.
 */
export const blockSize = 16;

/** A seam's byte: the offset of its letter, whether it is a compound's, and whether another seam follows. */
export const seamLetters = 0x3f;
export const seamFollows = 0x40;
export const seamOfCompound = 0x80;

/** The codes of endings in the file: `d` is the ending ed that shares its e (*freed*), `'t` the ending n't of *can't*. */
export const endingCodes = [
  's',
  'es',
  'ed',
  'd',
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
  "'t",
] as const;

/** The codes of what happens to the base. */
export const changeCodes: readonly Change[] = [
  'none',
  'doubled',
  'dropped e',
  'y to i',
  'ie to y',
  'f to v',
  'dropped le',
];

/** The first part number that takes two bytes. */
export const twoBytesFrom = 0xc0;

/** How many parts each ending has, in the order of the codes. */
const endingLengths: readonly number[] = [1, 1, 1, 1, 2, 1, 3, 1, 2, 1, 2, 1, 1, 1, 1, 1, 1];

/** How many parts an ending's own letters make; `d` and `'t` stand for ed and n't that share a letter with the base. */
export function endingPartsOf(ending: Ending | 'd' | "'t"): number {
  return endingLengths[(endingCodes as readonly string[]).indexOf(ending)] ?? 0;
}
