import type { Phoneme, Stress } from './phoneme.ts';

/** The two ways in which sounds are shown: the marks of American school dictionaries, or the international alphabet. */
export type Notation = 'dictionary' | 'ipa';

/**
 * Macron for long, breve for short, as American dictionaries have long written sounds (Webster's of 1913, in the public
 * domain, has both); the underlined th is the voiced one. Where a vowel changes without stress, see `unstressed`.
 */
const dictionaryMarks: Readonly<Record<Phoneme, string>> = {
  AA: 'ŏ',
  AE: 'ă',
  AH: 'ŭ',
  AO: 'ô',
  AW: 'ou',
  AY: 'ī',
  B: 'b',
  CH: 'ch',
  D: 'd',
  DH: 't͟h',
  EH: 'ĕ',
  ER: 'ûr',
  EY: 'ā',
  F: 'f',
  G: 'g',
  HH: 'h',
  IH: 'ĭ',
  IY: 'ē',
  JH: 'j',
  K: 'k',
  L: 'l',
  M: 'm',
  N: 'n',
  NG: 'ng',
  OW: 'ō',
  OY: 'oi',
  P: 'p',
  R: 'r',
  S: 's',
  SH: 'sh',
  T: 't',
  TH: 'th',
  UH: 'o͝o',
  UW: 'o͞o',
  V: 'v',
  W: 'w',
  Y: 'y',
  Z: 'z',
  ZH: 'zh',
};

/** The ARPAbet codes in the International Phonetic Alphabet, General American. */
const internationalAlphabet: Readonly<Record<Phoneme, string>> = {
  AA: 'ɑ',
  AE: 'æ',
  AH: 'ʌ',
  AO: 'ɔ',
  AW: 'aʊ',
  AY: 'aɪ',
  B: 'b',
  CH: 'tʃ',
  D: 'd',
  DH: 'ð',
  EH: 'ɛ',
  ER: 'ɝ',
  EY: 'eɪ',
  F: 'f',
  G: 'ɡ',
  HH: 'h',
  IH: 'ɪ',
  IY: 'i',
  JH: 'dʒ',
  K: 'k',
  L: 'l',
  M: 'm',
  N: 'n',
  NG: 'ŋ',
  OW: 'oʊ',
  OY: 'ɔɪ',
  P: 'p',
  R: 'ɹ',
  S: 's',
  SH: 'ʃ',
  T: 't',
  TH: 'θ',
  UH: 'ʊ',
  UW: 'u',
  V: 'v',
  W: 'w',
  Y: 'j',
  Z: 'z',
  ZH: 'ʒ',
};

/** Vowels that are written otherwise in a syllable without stress. */
const unstressed: Readonly<Record<Notation, Partial<Record<Phoneme, string>>>> = {
  dictionary: { AH: 'ə', ER: 'ər' },
  ipa: { AH: 'ə', ER: 'ɚ' },
};

/** Vowels before R within one grapheme, which dictionaries mark as one sound. */
const dictionaryBeforeR: Partial<Record<Phoneme, string>> = { AA: 'ä', AO: 'ô', EH: 'â', IH: 'î', IY: 'î' };

/**
 * The sounds of one grapheme as a reader is shown them, without slashes: `ā`, `ks`, `âr`; empty for a silent letter.
 * `stress` is that of the vowel among them; absent counts as stressed.
 */
export function notated(sounds: readonly Phoneme[], notation: Notation, stress?: Stress): string {
  const marks = notation === 'ipa' ? internationalAlphabet : dictionaryMarks;
  return sounds
    .map((sound, index) => {
      const weak = stress === 0 ? unstressed[notation][sound] : undefined;
      const beforeR =
        notation === 'dictionary' && sounds[index + 1] === 'R' ? dictionaryBeforeR[sound] : undefined;
      return weak ?? beforeR ?? marks[sound];
    })
    .join('');
}
