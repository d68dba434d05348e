import { describe, expect, test } from 'vitest';
import { noteInsertion, wordInsertion } from '../../../client/src/workshop/insertion.ts';
import {
  chainNote,
  chainSummary,
  fitCurve,
  fitSummary,
  stepLabel,
  stretchesOf,
  wordsSummary,
} from '../../../client/src/workshop/models.ts';
import type { ChainAnswer, FitAnswer } from '../../../server/src/editor/workshop/protocol.ts';

const chain: ChainAnswer = {
  lesson: '7',
  length: 3,
  isComplete: true,
  isLongest: false,
  links: [
    { word: 'man', changed: [] },
    {
      word: 'mane',
      changed: [
        { start: 3, end: 4 },
        { start: 1, end: 2 },
      ],
      step: { kind: 'change', from: 'a', to: 'a_e' },
    },
    { word: 'an', changed: [], step: { kind: 'drop', from: 'm' } },
  ],
};

describe('a word at the caret', () => {
  test.each([
    ['', 'ship', '', 'Ship'],
    ['The', 'ship', '', ' ship'],
    ['The ', 'ship', '', 'ship'],
    ['The ', 'ship', 'sat.', 'ship '],
    ['The ', 'ship', ' sat.', 'ship'],
    ['The ', 'ship', '.', 'ship'],
    ['It sat. ', 'ship', '', 'Ship'],
    ['It sat.', 'ship', '', ' Ship'],
  ])('“%s” + %s + “%s” → “%s”', (before, word, after, expected) => {
    expect(wordInsertion(before, word, after)).toBe(expected);
  });

  test.each([
    ['The map sat.', undefined, '\n\n> Word'],
    ['The map sat.', '', '\n\n> Word'],
    ['The map sat.', 'The man sat.', '\n\n> Word\n'],
    ['', '', '> Word'],
  ])('a note after “%s” and before “%s” is a paragraph of its own', (line, next, expected) => {
    expect(noteInsertion(line, 'Word', next)).toBe(expected);
  });
});

describe('a chain', () => {
  test('marks every changed letter, in the order of the word', () => {
    const marked = chain.links.map((link) =>
      stretchesOf(link)
        .map(({ text, isChanged }) => (isChanged ? `[${text}]` : text))
        .join(''),
    );
    expect(marked).toEqual(['man', 'm[a]n[e]', 'an']);
  });

  test('says each step and what is shorter than asked', () => {
    expect(chain.links.map(stepLabel)).toEqual(['', 'change a to a_e', 'drop m']);
    expect(chainNote(chain)).toBe('Word chain: man, mane, an.');
    expect(chainSummary(chain)).toBe('3 words at lesson 7');
    expect(chainSummary({ ...chain, length: 9, isComplete: false, isLongest: true })).toBe(
      '3 words, not 9: no longer chain exists at lesson 7.',
    );
  });
});

describe('a fit', () => {
  const lessons = [
    { name: '1', readable: 0.5, target: 0.9, reaches: false },
    { name: '2', readable: 1, target: 0.9, reaches: true },
  ];
  const fit: FitAnswer = { words: 2, differentWords: 2, lessons, first: '2', lasting: '2' };

  test('is a curve from the first lesson to the last', () => {
    expect(fitCurve(lessons, 300, 100)).toEqual({ readable: '0,50 300,0', target: '0,10 300,10' });
    expect(fitCurve([], 300, 100)).toEqual({ readable: '', target: '' });
  });

  test('says where the text belongs, and rounds nothing up', () => {
    expect(fitSummary(fit)).toBe('Lesson 2 is the first that reaches its target.');
    const { first, lasting, ...never } = fit;
    expect(fitSummary({ ...never, lessons: lessons.slice(0, 1) })).toMatch(
      /No lesson.*50\.0 % of its 2 words/,
    );
    expect(first).toBe(lasting);
  });
});

test('the number of words found', () => {
  const words = [{ word: 'ship', sounds: '', isNew: false }];
  expect(wordsSummary({ lesson: '4', words, hasMore: false })).toBe('1 word at lesson 4, and no more');
  expect(wordsSummary({ lesson: '4', words: [], hasMore: false })).toBe('No word is like that at lesson 4.');
});
