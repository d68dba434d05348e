import { expect, test } from 'vitest';
import { readSequence } from '../../../server/src/sequence/read-sequence.ts';
import { teachingOf } from '../../../server/src/sequence/teaching.ts';
import { packagePhonics } from '../../support/package-phonics.ts';
import { sampleTeaching } from '../../support/sample-lessons.ts';

/** What is wrong in a sequence with a lesson for each list of spellings, and the line each problem stands at. */
function problemsOf(...lessons: readonly string[]): readonly string[] {
  const text = `lessons:\n${lessons.map((spellings, at) => `  - name: "${at + 1}"\n    spellings: [${spellings}]\n`).join('')}`;
  return teachingOf(readSequence(text), packagePhonics).problems.map(
    ({ message, span, severity }) => `${severity} at ${text.slice(span.start, span.end)}: ${message}`,
  );
}

test.each([
  [
    'a key word of before that the new sound fits',
    ['ow as in bow', 'ow as in cow'],
    'warning at ow as in cow: “bow”, the key word of “ow as in bow” in lesson 1, is also read with the sound that ow has in “cow”. Give lesson 1 a key word that is read in one way.',
  ],
  [
    'a new key word that the old sound fits',
    ['ea as in bread', 'ea as in read'],
    'warning at ea as in read: “read” is also read with the sound of “ea as in bread”, which lesson 1 has taught. A key word that is read in one way shows the new sound.',
  ],
  [
    'the s of a word that is noun and verb',
    ['s as in sun', 's as in use'],
    'warning at s as in use: “use” is also read with the sound of “s as in sun”, which lesson 1 has taught. A key word that is read in one way shows the new sound.',
  ],
])('%s', (_, lessons, problem) => {
  expect(problemsOf(...lessons)).toEqual([problem]);
});

test.each([
  ['two sounds of one spelling', ['ow as in snow', 'ow as in cow', 'c as in cat', 'c as in city']],
  [
    'two sounds side by side in one lesson',
    ['se as in house, se as in cheese', 'th as in this, th as in thin'],
  ],
  ['what only accents vary', ['oo as in roof', 'oo as in book']],
  ['a word of two meanings by itself', ['ow as in bow', 'ea as in read']],
])('%s is no contradiction', (_, lessons) => {
  expect(problemsOf(...lessons)).toEqual([]);
});

test.each([
  ['sh as in shipp', '“shipp” is not a word in common use. Did you mean “ship”?'],
  ['ch as in chopp', '“chopp” is not a word in common use. Did you mean “chop”?'],
  [
    'oo as in moob',
    '“moob” is in no word list; its sounds (m-oo-b) were worked out by rule. Did you mean “moon”?',
  ],
])('a slip in a key word, %s', (line, problem) => {
  expect(problemsOf(line)).toEqual([`warning at ${line}: ${problem}`]);
});

test.each([
  'k as in Kim',
  'r as in Rab',
  'ou as in soul',
  'xe as in axe',
  's as in dogs',
  'v as in vet',
  'x as in tux',
])('%s has a key word that will do', (line) => {
  expect(problemsOf(line)).toEqual([]);
});

test('the sample sequence has no problems', () => {
  expect(sampleTeaching.problems).toEqual([]);
});
