import { expect } from 'vitest';
import { loadPhonics } from '../../server/src/load-phonics.ts';
import type { Reading } from '../../server/src/phonics/reading.ts';

/** The phonics of the whole lexicon, opened once a test file. */
export const phonics = loadPhonics();

/** A reading as sound boxes: `c-a_e-k`. */
export function cut(reading: Reading | undefined): string {
  return reading?.parts.map((part) => part.letters).join('-') ?? '';
}

/** The sounds of a reading, a silent part as 0: `K EY K`. */
export function said(reading: Reading | undefined): string {
  return reading?.parts.map((part) => part.sounds.join(' ') || '0').join(' ') ?? '';
}

/** What the first reading of a word is to be: `reads('rabbit').as('r-a-bb-i-t')`. */
export function reads(word: string): {
  as(graphemes: string, sounds?: string): void;
  divided(syllables: string): void;
  from(source: Reading['source']): void;
  madeOf(base: string, ending: string): void;
} {
  const [first] = phonics.readingsOf(word);
  return {
    as(graphemes, sounds) {
      expect(cut(first), word).toBe(graphemes);
      if (sounds !== undefined) expect(said(first), word).toBe(sounds);
    },
    divided(syllables) {
      expect(first?.syllables.map((syllable) => syllable.text).join('-'), word).toBe(syllables);
    },
    from(source) {
      expect(first?.source, word).toBe(source);
    },
    madeOf(base, ending) {
      expect(`${first?.inflection?.base} + ${first?.inflection?.ending}`, word).toBe(`${base} + ${ending}`);
    },
  };
}
