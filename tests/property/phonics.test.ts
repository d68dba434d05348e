import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { loadPhonics } from '../../server/src/load-phonics.ts';
import { phonics } from '../support/reads.ts';

const word = fc.oneof(
  fc.stringMatching(/^[a-z]{1,14}$/),
  fc.stringMatching(/^[A-Z]?[a-z]{1,8}('s|’s|n't|ing|ed|es|er|y)?$/),
  fc.string({
    unit: fc.constantFrom('a', 'e', 'th', 'qu', 'é', 'ñ', 'É', "'", '’', 'œ', 'r', 'le', 'zz', '\u0301', 'ß'),
    minLength: 1,
    maxLength: 10,
  }),
);

describe('any word', () => {
  it('has readings that cover its letters, each once, in order', () => {
    fc.assert(
      fc.property(word, (text) => {
        const readings = phonics.readingsOf(text);
        expect(readings.length > 0).toBe(/\p{L}/u.test(text) && hasPlainLetter(text));
        for (const { parts, syllables } of readings) {
          const starts = parts.map(({ spans }) => spans[0]?.[0] ?? -1);
          expect(starts).toEqual([...starts].sort((left, right) => left - right));
          const places = parts
            .flatMap(({ spans }) => spans.flatMap(([start, end]) => range(start, end)))
            .sort((left, right) => left - right);
          expect(new Set(places).size).toBe(places.length);
          for (const place of places) expect(place).toBeLessThan(text.length);
          for (const match of text.matchAll(/[A-Za-z]/g)) expect(places).toContain(match.index);
          expect(syllables.map((syllable) => syllable.text).join('')).toBe(text);
        }
      }),
      { numRuns: 2000 },
    );
  });

  it('is read the same way in a fresh start', () => {
    const fresh = loadPhonics();
    fc.assert(
      fc.property(word, (text) => {
        expect(fresh.readingsOf(text)).toEqual(phonics.readingsOf(text));
      }),
    );
  });
});

function hasPlainLetter(text: string): boolean {
  return /[a-zœß]/i.test(text.normalize('NFD'));
}

function range(start: number, end: number): readonly number[] {
  return Array.from({ length: end - start }, (_, index) => start + index);
}
