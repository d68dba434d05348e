import { describe, expect, it } from 'vitest';
import { isFamiliarWord, readabilityOf } from '../../../server/src/series/readability.ts';
import { packagePhonics } from '../../support/package-phonics.ts';

// The formulas as published: Flesch-Kincaid 1975 and Spache, revised 1974, worked by hand.
const worked = [
  // 0.39 x 10 + 11.8 x 1.5 - 15.59 = 6.01; 0.121 x 10 + 0.082 x 20 + 0.659 = 3.509
  {
    sentences: 10,
    words: 100,
    syllables: 150,
    unfamiliarWords: 20,
    fleschKincaid: 6.01,
    spache: 3.509,
  },
  // 0.39 x 4 + 11.8 x 1 - 15.59 = -2.23; 0.121 x 4 + 0 + 0.659 = 1.143
  { sentences: 5, words: 20, syllables: 20, unfamiliarWords: 0, fleschKincaid: -2.23, spache: 1.143 },
  // one sentence of one word of one syllable: the least that Flesch-Kincaid gives, -3.40
  { sentences: 1, words: 1, syllables: 1, unfamiliarWords: 1, fleschKincaid: -3.4, spache: 8.98 },
];

describe('readability by formula', () => {
  it.each(worked)('of $words words in $sentences sentences', ({ fleschKincaid, spache, ...counts }) => {
    const found = readabilityOf(counts);
    expect(found.fleschKincaid).toBeCloseTo(fleschKincaid, 10);
    expect(found.spache).toBeCloseTo(spache, 10);
  });

  it('says nothing of a text without words', () => {
    expect(readabilityOf({ sentences: 0, words: 0, syllables: 0, unfamiliarWords: 0 })).toEqual({});
  });

  it.each([
    ['cat', true],
    ['Cats', true],
    ['jumped', true],
    ["I'm", true],
    ["cat's", true],
    ['statute', false],
    ['perimeter', false],
  ])('takes %s for familiar: %s', (word, expected) => {
    const reading = packagePhonics.readingsOf(word)[0];
    expect(isFamiliarWord(word, reading, packagePhonics.words)).toBe(expected);
  });
});
