import { describe, expect, test } from 'vitest';
import { seriesCharts, seriesSummary, storyGrid, usesGrid } from '../../../client/src/series/model.ts';
import { edgesOf, evenlySeen, isWithin, seenBetween } from '../../../client/src/series/window-of.ts';
import type { SeriesAnswer, SeriesStory } from '../../../server/src/editor/series/protocol.ts';

const storyOf = (title: string, lessonIndex: number, readable: number): SeriesStory => ({
  uri: `file:///${title}.md`,
  title,
  lesson: String(lessonIndex + 1),
  lessonIndex,
  passes: readable >= 0.95,
  why: readable >= 0.95 ? '' : 'too little',
  readable,
  target: 0.95,
  words: 10,
  meanSentence: 5,
  longestSentence: 6,
  newWords: ['map', 'mat'],
  wordsSoFar: 2,
});

const answer: SeriesAnswer = {
  uri: 'file:///sequence.yaml',
  title: 'Willow Lane',
  sequences: [],
  limits: '',
  stories: [storyOf('Map', 0, 1), storyOf('Nap', 1, 0.9499), storyOf('Pin', 1, 1), storyOf('Sun', 2, 1)],
  spellings: [
    { label: 's as in sun', lesson: '2', lessonIndex: 1, total: 11, uses: [1, 0, 8, 2] },
    { label: 'm as in mud', lesson: '1', lessonIndex: 0, total: 0, uses: [0, 0, 0, 0] },
  ],
  highFrequencyWords: [{ label: 'the', lesson: '1', lessonIndex: 0, total: 3, uses: [3, 0, 0, 0] }],
  differentWords: 8,
  gaps: [],
};

const rowOf = ({ columns, cell }: ReturnType<typeof usesGrid>, row: number): string[] =>
  columns.map((_, column) => cell(row, column)).map(({ text, className }) => `${text}/${className ?? ''}`);

test('the summary counts what passes, is used and met', () => {
  expect(seriesSummary(answer)).toBe(
    '4 stories, 1 of them falls short of a target · 40 running words, 8 different · 1 of 2 spellings used · 1 of 1 high-frequency word met',
  );
});

test('a story that falls short is marked in its name, its figure and its verdict', () => {
  const { cell, columns } = storyGrid(answer);
  const said = columns.map((_, column) => cell(1, column).text);
  expect(said).toEqual([
    '✕ Nap',
    '2',
    '94.9 %',
    '95 %',
    '10',
    '5.0',
    '6',
    '2',
    '2',
    '-',
    '-',
    '✕ too little',
  ]);
  expect(cell(1, 0).name).toBe('Nap, falls short');
  expect(cell(0, 11)).toMatchObject({ text: 'passes' });
});

describe('uses by stories', () => {
  test('are set off by their number, framed in their own lesson, and none there is a fault', () => {
    const grid = usesGrid(answer, answer.spellings, 'spelling');
    expect(rowOf(grid, 0)).toEqual([
      's as in sun/',
      '2/',
      '11/',
      '1/early',
      '0/none own',
      '8/many own',
      '2/few',
    ]);
    expect(rowOf(grid, 1)).toEqual([
      'm as in mud/',
      '1/',
      '0/none',
      '0/none own',
      '·/rest',
      '·/rest',
      '·/rest',
    ]);
  });

  test('lead to the first use, or to the story where there is none', () => {
    const { cell } = usesGrid(answer, answer.highFrequencyWords, 'word');
    expect(cell(0, 3).opens).toEqual({ uri: 'file:///Map.md', place: { kind: 'word', word: 'the' } });
    expect(cell(0, 4).opens).toEqual({ uri: 'file:///Nap.md', place: { kind: 'story' } });
    expect(cell(0, 0).opens).toEqual({
      uri: 'file:///sequence.yaml',
      place: { kind: 'lesson', lesson: '1' },
    });
    expect(cell(0, 4).name).toBe('0 uses');
  });
});

test('charts have a bar for each story, from a round figure below the lowest', () => {
  const [readable] = seriesCharts(answer);
  expect(readable).toMatchObject({ least: 80, most: 100 });
  expect(readable?.bars.map(({ fallsShort }) => fallsShort)).toEqual([false, true, false, false]);
});

describe('what of a large table is in sight', () => {
  test.each([
    ['the top', 0, 100, { first: 0, last: 12 }],
    ['the middle', 1000, 100, { first: 98, last: 112 }],
    ['the end', 1900, 100, { first: 188, last: 199 }],
  ])('%s of 200 rows', (_, from, length, seen) => {
    expect(evenlySeen(from, length, 10, 200, 2)).toEqual(seen);
  });

  test.each([
    [0, 50, { first: 0, last: 1 }],
    [30, 50, { first: 1, last: 2 }],
    [100, 500, { first: 3, last: 3 }],
  ])('columns of their own widths from %d on', (from, length, seen) => {
    expect(seenBetween(edgesOf([30, 40, 20, 60]), from, length, 0)).toEqual(seen);
  });

  test('is drawn again when it leaves what is drawn', () => {
    expect(isWithin({ first: 2, last: 5 }, { first: 0, last: 5 })).toBe(true);
    expect(isWithin({ first: 2, last: 6 }, { first: 0, last: 5 })).toBe(false);
  });
});
