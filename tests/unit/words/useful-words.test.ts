import { describe, expect, it } from 'vitest';
import { readSequence } from '../../../server/src/sequence/read-sequence.ts';
import { teachingOf } from '../../../server/src/sequence/teaching.ts';
import { createWordFinder } from '../../../server/src/words/find-words.ts';
import { packagePhonics } from '../../support/package-phonics.ts';
import { sampleLesson, sampleTeaching } from '../../support/sample-lessons.ts';

const finder = createWordFinder(sampleTeaching, packagePhonics);

function first(lesson: string, count: number): readonly string[] {
  return finder.find(sampleLesson(lesson), { limit: count }).words.map(({ word }) => word);
}

describe('the words a teacher wants come first', () => {
  it.each([
    ['3', 30, 'man mom top cat can not map sat cap pot an nap pan tap at on'],
    ['8', 60, 'big bad dad mom run sit cut dog fun hot'],
    ['14', 60, 'think want thing long hand king'],
    ['18', 60, 'like make take time game late name'],
  ])('lesson %s has among its first %i: %s', (lesson, count, words) => {
    expect(first(lesson, count)).toEqual(expect.arrayContaining(words.split(' ')));
  });

  it.each(['3', '8', '14', '18'])('a base word before its forms, at lesson %s', (lesson) => {
    for (const { listed } of finder.find(sampleLesson(lesson), { limit: 60 }).words) {
      expect(listed.inflection, listed.word).toBeUndefined();
    }
  });
});

describe('words that some people say otherwise', () => {
  it('come after those that all say so: tube is none for u_e as in cube', () => {
    const sequence = readSequence(`lessons:
  - name: "1"
    spellings: [c as in cat, b as in cub, m as in mud, l as in log, t as in top, f as in fun, u_e as in cube, u as in cub]
`);
    const teaching = teachingOf(sequence, packagePhonics);
    const taught = teaching.taughtAt('1');
    if (taught === undefined) throw new Error('There is no lesson 1.');
    const finder = createWordFinder(teaching, packagePhonics);
    const { words } = finder.find(taught, { spelling: { letters: 'u_e' } });
    const order = words.map(({ word }) => word);
    expect(order.indexOf('cute')).toBeLessThan(order.indexOf('tube'));
    expect(order.at(-1)).toBe('tube');
  });
});

describe('words that are never offered', () => {
  it.each([
    ['gun', 'violence'],
    ['guns', 'violence'],
    ['gunned', 'violence'],
    ['shotgun', 'violence'],
    ['murderer', 'violence'],
    ['dying', 'death'],
    ['sexy', 'sex and private parts'],
    ['beer', 'alcohol'],
    ['ted', 'a name'],
    ['mr', 'not a word by itself'],
    ['damned', 'swearing'],
    ['handguns', 'violence'],
    ['gunboats', 'violence'],
  ])('%s: %s', (word, reason) => {
    expect(packagePhonics.words.unfitFor(word)).toBe(reason);
    expect(packagePhonics.words.find(word)).toBeUndefined();
    expect(packagePhonics.words.all().some((each) => each.word === word)).toBe(false);
  });

  it.each([
    'snapshot',
    'peacock',
    'hopscotch',
    'eyelash',
    'farther',
    'bulletin',
    'diving',
    'grass',
    'class',
    'title',
    'butter',
  ])('%s is fit, whatever letters it shares with one that is not', (word) => {
    expect(packagePhonics.words.unfitFor(word)).toBeUndefined();
    expect(packagePhonics.words.find(word)?.word).toBe(word);
  });

  it.each(['b', 'x', "cat's", "he'll", 'smith'])('%s is no word for a list', (word) => {
    expect(packagePhonics.words.find(word)).toBeUndefined();
  });
});
