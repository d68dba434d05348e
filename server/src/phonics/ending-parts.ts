import type { AlignedPart } from './align.ts';
import { isVowel, type Phoneme } from './phoneme.ts';
import type { Ending } from './reading.ts';

/** An ending's parts by the conventions for endings: ed and es one grapheme, ing, est and ly as their letters stand. */
export function partsOfEnding(
  ending: Ending,
  letters: string,
  sounds: readonly Phoneme[],
): readonly AlignedPart[] {
  const vowel = (text: string, ...list: readonly Phoneme[]): AlignedPart => ({
    letters: text,
    sounds: list,
    stress: 0,
  });
  const consonant = (text: string, ...list: readonly Phoneme[]): AlignedPart => ({
    letters: text,
    sounds: list,
  });
  switch (ending) {
    case 'ing':
      return [vowel('i', 'IH'), consonant('ng', 'NG')];
    case 'er':
      return [vowel('er', 'ER')];
    case 'est':
      return [vowel('e', ...sounds.slice(0, 1)), consonant('s', 'S'), consonant('t', 'T')];
    case 'y':
      return [vowel('y', 'IY')];
    case 'ly':
      return [consonant('l', 'L'), vowel('y', 'IY')];
    case "n't":
      if (letters === "'t") return [consonant(letters, 'T')];
      return [sounds.length === 3 ? vowel('n', 'AH', 'N') : consonant('n', 'N'), consonant("'t", 'T')];
    default:
      return [sounds.some(isVowel) ? vowel(letters, ...sounds) : consonant(letters, ...sounds)];
  }
}
