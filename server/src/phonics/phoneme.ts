/** The 39 ARPAbet codes of the CMU Pronouncing Dictionary, without stress digits. */
export const phonemes = [
  'AA',
  'AE',
  'AH',
  'AO',
  'AW',
  'AY',
  'B',
  'CH',
  'D',
  'DH',
  'EH',
  'ER',
  'EY',
  'F',
  'G',
  'HH',
  'IH',
  'IY',
  'JH',
  'K',
  'L',
  'M',
  'N',
  'NG',
  'OW',
  'OY',
  'P',
  'R',
  'S',
  'SH',
  'T',
  'TH',
  'UH',
  'UW',
  'V',
  'W',
  'Y',
  'Z',
  'ZH',
] as const;

/** A speech sound of General American English, as an ARPAbet code. */
export type Phoneme = (typeof phonemes)[number];

/** The vowels among the phonemes; each is the middle of one syllable. */
export const vowels: ReadonlySet<Phoneme> = new Set<Phoneme>([
  'AA',
  'AE',
  'AH',
  'AO',
  'AW',
  'AY',
  'EH',
  'ER',
  'EY',
  'IH',
  'IY',
  'OW',
  'OY',
  'UH',
  'UW',
]);

/** True for the fifteen vowels, ER among them. */
export function isVowel(phoneme: Phoneme): boolean {
  return vowels.has(phoneme);
}

/** Stress of a syllable as the CMU dictionary writes it: 1 primary, 2 secondary, 0 none. */
export type Stress = 0 | 1 | 2;
