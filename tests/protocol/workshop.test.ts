import { describe, expect, test } from 'vitest';
import {
  type ChainAnswer,
  chainRequest,
  type FitAnswer,
  fitRequest,
  type NoAnswer,
  type WordsAnswer,
  wordsRequest,
} from '../../server/src/editor/workshop/protocol.ts';
import { packagePhonics } from '../support/package-phonics.ts';
import { smallSequence, storyAt } from '../support/small-lane.ts';
import { type Desk, sitDown, uriOf } from '../support/writing-desk.ts';

const story = '/lane/a.md';

async function sit(lesson = '1'): Promise<Desk> {
  const desk = await sitDown({
    phonics: packagePhonics,
    files: { '/lane/sequence.yaml': smallSequence },
  });
  await desk.open(story, storyAt(lesson, '# Map\n\nThe map sat.'));
  return desk;
}

const words = (desk: Desk, wish: object): Promise<WordsAnswer & NoAnswer> =>
  desk.connection.sendRequest(wordsRequest, { uri: uriOf(story), limit: 20, ...wish });

describe('the word finder', () => {
  test('gives readable words of the lesson, as the filters ask', async () => {
    const desk = await sit();
    const { lesson, words: found } = await words(desk, { sound: 'P', place: 'end', sounds: 3 });
    expect(lesson).toBe('1');
    expect(found.length).toBeGreaterThan(0);
    for (const { word } of found) expect(word).toMatch(/^..p$/);
  });

  test('tells used words from others', async () => {
    const desk = await sit();
    const used = await words(desk, { isUsed: true });
    expect(used.words.map(({ word }) => word)).toContain('map');
    const unused = await words(desk, { isUsed: false, limit: 1000 });
    expect(unused.words.map(({ word }) => word)).not.toContain('map');
  });

  test('says what is no spelling, and what is no story', async () => {
    const desk = await sit();
    expect((await words(desk, { spelling: '§' })).message).toMatch(/is no spelling/);
    expect((await words(desk, { uri: uriOf('/lane/none.md') })).message).toMatch(/Open a story/);
  });
});

describe('the chain', () => {
  test('marks the letters that changed', async () => {
    const desk = await sit();
    const answer: ChainAnswer = await desk.connection.sendRequest(chainRequest, {
      uri: uriOf(story),
      length: 3,
      start: 'map',
      seed: 1,
    });
    expect(answer.links[0]).toEqual({ word: 'map', changed: [] });
    for (const { word, changed, step } of answer.links.slice(1)) {
      const letters = changed.map(({ start, end }) => word.slice(start, end)).join('');
      expect(letters).toBe(step?.to ?? '');
    }
    expect(answer.links.length).toBeGreaterThan(1);
  });

  test('says when a start is no word of the lesson', async () => {
    const desk = await sit();
    const params = { uri: uriOf(story), length: 3, start: 'night', seed: 1 };
    const answer: NoAnswer = await desk.connection.sendRequest(chainRequest, params);
    expect(answer.message).toMatch(/“night” cannot begin a chain/);
  });
});

describe('the fit', () => {
  test('finds the first lesson for any text, and what holds it back before', async () => {
    const desk = await sit();
    const fit: FitAnswer = await desk.connection.sendRequest(fitRequest, {
      uri: uriOf('/lane/notes.txt'),
      text: 'Night sat. The map sat.',
    });
    expect(fit.words).toBe(5);
    expect(fit.lessons.length).toBeGreaterThan(1);
    for (const { readable } of fit.lessons) expect(readable).toBeLessThanOrEqual(1);
  });

  test('says when there is no word', async () => {
    const desk = await sit();
    const params = { uri: uriOf(story), text: ' \n' };
    expect(await desk.connection.sendRequest(fitRequest, params)).toEqual({
      message: 'There is no word in this text.',
    });
  });
});
