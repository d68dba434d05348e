import { expect, test } from 'vitest';
import { counted, percentOf, targetPercent, wholeNumber } from '../../../client/src/gauge/figures.ts';

test.each([
  [96, 100, '96.0 %'],
  [9496, 10000, '94.9 %'],
  [9499999, 10000000, '94.9 %'],
  [19, 20, '95.0 %'],
  [2, 3, '66.6 %'],
  [57, 100, '57.0 %'],
  [29, 100, '29.0 %'],
  [1, 1, '100.0 %'],
  [1999, 2000, '99.9 %'],
  [0, 12, '0.0 %'],
  [0, 0, '–'],
])('%i of %i words is %s', (part, whole, percent) => {
  expect(percentOf(part, whole)).toBe(percent);
});

test('every whole percent is written as itself', () => {
  for (let percent = 0; percent <= 100; percent++) expect(percentOf(percent, 100)).toBe(`${percent}.0 %`);
});

test.each([
  [0.95, '95 %'],
  [0.925, '92.5 %'],
  [0.57, '57 %'],
  [1, '100 %'],
])('a target of %d is written %s', (target, text) => {
  expect(targetPercent(target)).toBe(text);
});

test.each([
  [0, '0 words'],
  [1, '1 word'],
  [2, '2 words'],
  [20000, '20,000 words'],
])('%i words are written "%s"', (count, text) => {
  expect(counted(count, 'word')).toBe(text);
});

test.each([
  [999, '999'],
  [1000, '1,000'],
  [1234567, '1,234,567'],
])('%i is written %s', (count, text) => {
  expect(wholeNumber(count)).toBe(text);
});
