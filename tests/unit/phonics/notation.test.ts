import { expect, test } from 'vitest';
import { notated } from '../../../server/src/phonics/notation.ts';
import { type Phoneme, phonemes, type Stress } from '../../../server/src/phonics/phoneme.ts';

const rows: readonly (readonly [sounds: readonly Phoneme[], stress: Stress | undefined, string, string])[] = [
  [['AE'], 1, 'ă', 'æ'],
  [['EY'], 1, 'ā', 'eɪ'],
  [['EH'], 1, 'ĕ', 'ɛ'],
  [['IY'], 0, 'ē', 'i'],
  [['IH'], 0, 'ĭ', 'ɪ'],
  [['AY'], 2, 'ī', 'aɪ'],
  [['AA'], 1, 'ŏ', 'ɑ'],
  [['OW'], 1, 'ō', 'oʊ'],
  [['AH'], 1, 'ŭ', 'ʌ'],
  [['AH'], 0, 'ə', 'ə'],
  [['AH'], undefined, 'ŭ', 'ʌ'],
  [['UW'], 1, 'o͞o', 'u'],
  [['UH'], 1, 'o͝o', 'ʊ'],
  [['Y', 'UW'], 1, 'yo͞o', 'ju'],
  [['ER'], 1, 'ûr', 'ɝ'],
  [['ER'], 0, 'ər', 'ɚ'],
  [['AA', 'R'], 1, 'är', 'ɑɹ'],
  [['EH', 'R'], 1, 'âr', 'ɛɹ'],
  [['AO', 'R'], 1, 'ôr', 'ɔɹ'],
  [['IH', 'R'], 1, 'îr', 'ɪɹ'],
  [['AH', 'L'], 0, 'əl', 'əl'],
  [['K', 'S'], undefined, 'ks', 'ks'],
  [['TH'], undefined, 'th', 'θ'],
  [['DH'], undefined, 't͟h', 'ð'],
  [['CH'], undefined, 'ch', 'tʃ'],
  [['NG'], undefined, 'ng', 'ŋ'],
  [[], undefined, '', ''],
];

test.each(rows)('%j with stress %s is %s and %s', (sounds, stress, dictionary, ipa) => {
  expect(notated(sounds, 'dictionary', stress)).toBe(dictionary);
  expect(notated(sounds, 'ipa', stress)).toBe(ipa);
});

test.each(['dictionary', 'ipa'] as const)('every sound has a sign of its own in %s', (notation) => {
  const signs = phonemes.map((phoneme) => notated([phoneme], notation, 1));
  expect(new Set(signs).size).toBe(phonemes.length);
});
