import { describe, expect, it } from 'vitest';
import {
  decodableShare,
  reachesReadable,
  readableShare,
  shownPercent,
  shownShare,
  wordsShort,
} from '../../../server/src/review/figures.ts';
import type { Counts } from '../../../server/src/review/review.ts';

const counts = (given: Partial<Counts>): Counts => ({
  words: 0,
  decodable: 0,
  'high-frequency': 0,
  name: 0,
  'story-word': 0,
  'not-taught': 0,
  ...given,
});

describe('the figures of a text', () => {
  it('counts decodable and high-frequency words as readable; names and story words only below the line', () => {
    const mixed = counts({ words: 10, decodable: 5, 'high-frequency': 2, name: 2, 'story-word': 1 });
    expect(readableShare(mixed)).toBe(0.7);
    expect(decodableShare(mixed)).toBe(0.5);
  });

  it('takes a text without words for readable', () => {
    expect(readableShare(counts({}))).toBe(1);
    expect(decodableShare(counts({}))).toBe(1);
    expect(reachesReadable(counts({}), 95)).toBe(true);
  });

  it.each([
    { words: 20, decodable: 19, target: 95, reaches: true, short: 0 },
    { words: 20, decodable: 18, target: 95, reaches: false, short: 1 },
    { words: 1000, decodable: 949, target: 95, reaches: false, short: 1 },
    { words: 7, decodable: 6, target: 92.5, reaches: false, short: 1 },
    { words: 40, decodable: 37, target: 92.5, reaches: true, short: 0 },
    { words: 3, decodable: 3, target: 100, reaches: true, short: 0 },
  ])(
    'compares $decodable of $words with $target % without rounding',
    ({ words, decodable, target, reaches, short }) => {
      const given = counts({ words, decodable });
      expect(reachesReadable(given, target)).toBe(reaches);
      expect(wordsShort(given, target)).toBe(short);
    },
  );

  it.each([
    [1, '100.0'],
    [0, '0.0'],
    [0.95, '95.0'],
    [0.9499, '94.9'],
    [949999 / 1000000, '94.9'],
    [2 / 3, '66.6'],
    [0.29, '29.0'],
    [0.57, '57.0'],
    [999 / 1000, '99.9'],
    [9999 / 10000, '99.9'],
  ])('shows %d with one decimal, rounded down: %s', (share, shown) => {
    expect(shownPercent(share)).toBe(shown);
  });

  it('shows every share of up to 400 words as whole-number arithmetic does', () => {
    for (let words = 1; words <= 400; words++) {
      for (let part = 0; part <= words; part++) {
        const tenths = (part * 1000 - ((part * 1000) % words)) / words;
        expect(shownPercent(part / words)).toBe(`${(tenths - (tenths % 10)) / 10}.${tenths % 10}`);
      }
    }
  });
});

it('gives a share for people is rounded down, and a dash where there are no words', () => {
  expect([shownShare(0.94999), shownShare(0.29), shownShare(1), shownShare(1, 0)]).toEqual([
    '94.9 %',
    '29.0 %',
    '100.0 %',
    '–',
  ]);
});
