import { expect, test } from 'vitest';
import { typographic } from '../../../server/src/materials/layout/typographic.ts';

test.each([
  ['"It is big!" said Kim.', '“It is big!” said Kim.'],
  ['Kim said, "Go!"', 'Kim said, “Go!”'],
  [`"'Tap!' it said," said Kim.`, '“‘Tap!’ it said,” said Kim.'],
  ["It's the dogs' bowl.", 'It’s the dogs’ bowl.'],
  ["'Tis big. Get 'em!", '’Tis big. Get ’em!'],
  ["rock 'n' roll", 'rock ’n’ roll'],
  ["'Round' is a word.", '‘Round’ is a word.'],
  ['("Yes")', '(“Yes”)'],
  ['Then... a bang', 'Then… a bang'],
  ['Then.... a bang', 'Then.... a bang'],
  ['Tam -- and Nod', 'Tam — and Nod'],
  ['“Already” curly’s', '“Already” curly’s'],
  ['cafe\u0301', 'café'],
  ['soft\u00adhyphen, zero\u200bwidth', 'softhyphen, zerowidth'],
  ['no\u00a0break', 'no break'],
])('%s is printed as %s', (written, printed) => {
  expect(typographic(written)).toBe(printed);
});
