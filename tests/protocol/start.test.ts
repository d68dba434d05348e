import { expect, test } from 'vitest';
import {
  type ImportSequenceAnswer,
  importSequenceRequest,
  type NewStoryAnswer,
  newStoryRequest,
  type SequenceAnswer,
  sequenceRequest,
} from '../../server/src/editor/start/protocol.ts';
import { packagePhonics } from '../support/package-phonics.ts';
import { smallSequence } from '../support/small-lane.ts';
import { sitDown, uriOf } from '../support/writing-desk.ts';

const sequenceOf = async (path: string): Promise<SequenceAnswer | null> => {
  const desk = await sitDown({ phonics: packagePhonics, files: { '/lane/sequence.yaml': smallSequence } });
  return desk.connection.sendRequest(sequenceRequest, { uri: uriOf(path) });
};

test('the lessons that a new story may choose from, though no file is open', async () => {
  const answer = await sequenceOf('/lane/new/sequence.yaml');
  expect(answer?.lessons[0]?.name).toBe('1');
  expect(answer?.csv.split('\r\n')).toHaveLength((answer?.lessons.length ?? 0) + 3);
});

test('no sequence, no answer', async () => {
  expect(await sequenceOf('/elsewhere/sequence.yaml')).toBeNull();
});

test('a new story of a lesson has no marks when it is opened', async () => {
  const files = { '/lane/sequence.yaml': smallSequence };
  const desk = await sitDown({ phonics: packagePhonics, files });
  const path = '/lane/03-night.md';
  const wish = { uri: uriOf(path), title: 'Night', lesson: '3', pages: 2 };
  const made: NewStoryAnswer | null = await desk.connection.sendRequest(newStoryRequest, wish);
  await desk.open(path, made?.text ?? '');
  expect(await desk.marks(path)).toEqual([]);
  expect(made?.text).toMatch(/night/i);
  expect(await desk.connection.sendRequest(newStoryRequest, { ...wish, lesson: '99' })).toBeNull();
});

test('a table of lessons: columns with an example, problems at their cells, and the sequence', async () => {
  const desk = await sitDown({ phonics: packagePhonics });
  const text = 'Week;Graphemes;Books\r\n1;sh;The Ship\r\n2;ch (chin);\r\n';
  const ask = (params: object): Promise<ImportSequenceAnswer> =>
    desk.connection.sendRequest(importSequenceRequest, params);
  const guessed = await ask({ text });
  expect(guessed.columns).toEqual([
    { heading: 'Week', use: 'lesson', example: '1' },
    { heading: 'Graphemes', use: 'spellings', example: 'sh' },
    { heading: 'Books', use: 'note', example: 'The Ship' },
  ]);
  expect(guessed.lessons).toBe(2);
  expect(guessed.problems.map(({ range, severity }) => [range.start, range.end, severity])).toEqual([
    [{ line: 1, character: 2 }, { line: 1, character: 4 }, 'warning'],
  ]);
  await desk.open('/lane/sequence.yaml', guessed.sequence);
  expect(await desk.marks('/lane/sequence.yaml')).toEqual([]);
  expect(guessed.sequence).toContain('# Books: The Ship');
  const changed = await ask({ text, uses: ['lesson', 'title', 'left out'] });
  expect(changed.sequence).not.toContain('The Ship');
  expect(changed.sequence).toContain('title: sh');
});
