import { describe, expect, it } from 'vitest';
import { readSequence } from '../../../server/src/sequence/read-sequence.ts';
import { teachingOf } from '../../../server/src/sequence/teaching.ts';
import { createWordFinder } from '../../../server/src/words/find-words.ts';
import type { WordQuery } from '../../../server/src/words/word-query.ts';
import { beginnersWords, handPhonics } from '../../support/hand-phonics.ts';

const phonics = handPhonics(beginnersWords);
const teaching = teachingOf(
  readSequence(`lessons:
  - name: "1"
    spellings: [m as in map, a as in map, p as in map, s as in sat, t as in sat, n as in pan]
    high-frequency words: [said]
  - name: "2"
    spellings: [i as in sit, h as in hat, ll as in hill, c as in cat, o as in hop]
    high-frequency words: [ball]
    endings: [s, ed]
  - name: "3"
    spellings: [a_e as in cake, k as in kit, u as in mud, d as in dog, ng as in ring, r as in red, igh as in light]
    blends: [end]
    endings: [ing]
`),
  phonics,
);
const finder = createWordFinder(teaching, phonics);

/** The words of a query at a lesson, in the order of the letters. */
function found(lesson: string, query: WordQuery = {}): readonly string[] {
  const taught = teaching.taughtAt(lesson);
  if (taught === undefined) throw new Error(`There is no lesson ${lesson}.`);
  return finder
    .find(taught, query)
    .words.map(({ word }) => word)
    .sort();
}

describe('the words of a lesson', () => {
  it.each([
    ['1', ['map', 'mat', 'nap', 'pan', 'said', 'sat']],
    [
      '2',
      [
        'ball',
        'cat',
        'cats',
        'hat',
        'hill',
        'hop',
        'hopped',
        'map',
        'mat',
        'nap',
        'pan',
        'pit',
        'said',
        'sat',
        'sit',
        'top',
      ],
    ],
  ])('are those that can be sounded out and those taught whole: lesson %s', (lesson, words) => {
    expect(found(lesson)).toEqual(words);
  });

  it('leave out what is never offered, though it can be read', () => {
    // The hand-made list calls mud unfit.
    expect(found('3')).not.toContain('mud');
    expect(found('3')).toContain('kit');
  });

  it('have forms with a changed base: baking is bake with ing', () => {
    expect(found('3', { spelling: { letters: 'a_e' } })).toEqual(['cake', 'make', 'tame']);
    expect(found('3')).not.toContain('baking');
  });
});

describe('what words may be asked for', () => {
  it.each<[string, string, WordQuery, readonly string[]]>([
    ['a spelling', '2', { spelling: { letters: 'll' } }, ['ball', 'hill']],
    ['letters side by side', '2', { spelling: { letters: 'at' } }, ['cat', 'cats', 'hat', 'mat', 'sat']],
    ['a spelling at the start', '1', { spelling: { letters: 'm' }, place: 'start' }, ['map', 'mat']],
    ['a spelling at the end', '1', { spelling: { letters: 'n' }, place: 'end' }, ['pan']],
    [
      'a spelling in the middle',
      '2',
      { spelling: { letters: 'o' }, place: 'middle' },
      ['hop', 'hopped', 'top'],
    ],
    ['a sound, however it is spelled', '3', { sound: 'EY', baseFormsOnly: true }, ['cake', 'make', 'tame']],
    ['a sound at the end', '2', { sound: 'L', place: 'end' }, ['ball', 'hill']],
    ['a number of sounds', '2', { sounds: { least: 4, most: 9 } }, ['cats', 'hopped']],
    [
      'what is new',
      '2',
      { isNew: true, baseFormsOnly: true },
      ['ball', 'cat', 'hat', 'hill', 'hop', 'pit', 'sit', 'top'],
    ],
    ['base forms', '2', { spelling: { letters: 'c' }, baseFormsOnly: true }, ['cat']],
    ['words a text uses', '1', { used: { words: new Set(['map', 'night']), isUsed: true } }, ['map']],
    [
      'words it does not',
      '1',
      { used: { words: new Set(['map', 'mat', 'said']), isUsed: false } },
      ['nap', 'pan', 'sat'],
    ],
    ['verbs, of which the list has none', '1', { partOfSpeech: 2 }, []],
  ])('%s', (_, lesson, query, words) => {
    expect(found(lesson, query)).toEqual(words);
  });

  it('so many words, and whether there are more', () => {
    const taught = teaching.taughtAt('1');
    if (taught === undefined) throw new Error('There is no lesson 1.');
    expect(finder.find(taught, { limit: 2 })).toMatchObject({ hasMore: true, words: { length: 2 } });
    expect(finder.find(taught, { limit: 6 })).toMatchObject({ hasMore: false, words: { length: 6 } });
  });
});
