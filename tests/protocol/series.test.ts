import { describe, expect, test } from 'vitest';
import {
  type SeriesAnswer,
  type SeriesPlace,
  type SeriesPlaceResult,
  type SeriesReportParams,
  type SeriesReportResult,
  seriesChangedNotification,
  seriesPlaceRequest,
  seriesReportRequest,
  seriesRequest,
} from '../../server/src/editor/series/protocol.ts';
import { packagePhonics } from '../support/package-phonics.ts';
import { smallSequence, storyAt } from '../support/small-lane.ts';
import { type Desk, settled, sitDown, uriOf } from '../support/writing-desk.ts';

const sequence = smallSequence.replace('readable: 0', 'readable: 95');
const files = {
  '/lane/sequence.yaml': sequence,
  '/lane/a.md': storyAt('1', '# Map\n\nThe map sat. The man sat.'),
  '/lane/b.md': storyAt('3', '# Night\n\nThe night is night.'),
  '/lane/c.md': storyAt('1', '# Nap\n\nThe man sat. The lock sat.'),
};

const sit = (): Promise<Desk> => sitDown({ listsFiles: true, phonics: packagePhonics, files });
const ask = (desk: Desk, uri?: string): Promise<SeriesAnswer | null> =>
  desk.connection.sendRequest(seriesRequest, uri === undefined ? {} : { uri });

/** Uses of one thing by story, and all of them. */
const usesOf = (answer: SeriesAnswer | null, label: string) => {
  const row = [...(answer?.spellings ?? []), ...(answer?.highFrequencyWords ?? [])].find(
    (each) => each.label === label,
  );
  return row && [...row.uses, row.total];
};

describe('the series of a workspace', () => {
  test('has the stories in the order of the year, with their figures', async () => {
    const answer = await ask(await sit());
    expect(answer?.title).toBe('Willow Lane');
    expect(answer?.uri).toBe(uriOf('/lane/sequence.yaml'));
    expect(
      answer?.stories.map(({ title, lesson, passes, words, newWords }) => [
        title,
        lesson,
        passes,
        words,
        newWords.join(' '),
      ]),
    ).toEqual([
      ['Map', '1', true, 6, 'The map sat man'],
      ['Nap', '1', false, 6, 'lock'],
      ['Night', '3', false, 4, 'night is'],
    ]);
  });

  test('counts uses story by story', async () => {
    const answer = await ask(await sit());
    expect(usesOf(answer, 'the')).toEqual([2, 2, 1, 5]);
    expect(usesOf(answer, 'igh as in light')).toEqual([0, 0, 2, 2]);
    expect(usesOf(answer, 'ck as in lock')).toEqual([0, 0, 0, 0]);
  });

  test('names gaps, each with a place to look', async () => {
    const answer = await ask(await sit());
    const missed = answer?.gaps.find(({ kind }) => kind === 'target-missed');
    expect(missed?.gaps.map(({ uri, place }) => [uri, place.kind])).toEqual([
      [uriOf('/lane/c.md'), 'story'],
      [uriOf('/lane/b.md'), 'story'],
    ]);
  });

  test('follows a sequence that is not saved, and says when it is another', async () => {
    const desk = await sit();
    let told = 0;
    desk.connection.onNotification(seriesChangedNotification, () => {
      told++;
    });
    await desk.open('/lane/sequence.yaml', sequence);
    await desk.edit('/lane/sequence.yaml', 'ck as in lock', 'd as in dad');
    await desk.clock.pass(300);
    expect(told, 'nobody has asked yet').toBe(0);
    await ask(desk);
    await desk.edit('/lane/sequence.yaml', '[igh as in light]', '[igh as in light, ck as in lock]');
    await desk.clock.pass(300);
    expect(told).toBe(1);
    const answer = await ask(desk);
    expect(answer?.spellings.map(({ label, lesson }) => `${label} ${lesson}`)).toEqual(
      expect.arrayContaining(['ck as in lock 3', 'd as in dad 4']),
    );
    // What stories gave before the change is taken over to the new version of the sequence.
    expect(usesOf(answer, 'm as in mud')).toEqual([2, 1, 0, 3]);
  });

  test('of the file that is asked for, where there are several', async () => {
    const desk = await sitDown({
      listsFiles: true,
      phonics: packagePhonics,
      files: {
        ...files,
        '/lane/other/sequence.yaml': sequence.replace('Willow Lane', 'Elm Row'),
        '/lane/other/d.md': storyAt('1', 'The map sat.'),
      },
    });
    expect((await ask(desk))?.title).toBe('Willow Lane');
    expect((await ask(desk, uriOf('/lane/other/d.md')))?.title).toBe('Elm Row');
    const answer = await ask(desk, uriOf('/lane/other/sequence.yaml'));
    expect(answer?.stories.map(({ title }) => title)).toEqual(['d.md']);
    expect(answer?.sequences.map(({ title, stories }) => [title, stories])).toEqual([
      ['Willow Lane', 3],
      ['Elm Row', 1],
    ]);
  });

  test('is none without a story', async () => {
    const desk = await sitDown({ listsFiles: true, files: { '/lane/sequence.yaml': sequence } });
    expect(await ask(desk)).toBeNull();
  });
});

test.each([
  ['html', undefined, /<h1>Willow Lane<\/h1>/],
  ['json', undefined, /^\{"version":1,\n"title":"Willow Lane"/],
  ['csv', undefined, /1,Map,a\.md,yes/],
  ['csv', 'words', /lock,1,Nap,c\.md,1,1,not-taught/],
] as const)(
  'a report as %s, table %s, names stories by their way from the sequence',
  async (format, table, found) => {
    const desk = await sitDown({ listsFiles: true, prints: true, phonics: packagePhonics, files });
    const params: SeriesReportParams = { format, ...(table && { table }) };
    const report = await desk.connection.sendRequest<SeriesReportResult>(seriesReportRequest, params);
    expect(report).toMatch(found);
    expect(report).not.toContain('file://');
  },
);

describe('a place of a series', () => {
  const cases: readonly (readonly [string, string, SeriesPlace, string | null])[] = [
    ['a story that falls short: the first word that is not readable', 'c.md', { kind: 'story' }, 'lock'],
    ['a story that passes: its first word', 'a.md', { kind: 'story' }, 'The'],
    ['the first use of a spelling', 'b.md', { kind: 'spelling', spelling: 'igh as in light' }, 'night'],
    ['the first use of a word', 'c.md', { kind: 'word', word: 'SAT' }, 'sat'],
    ['a word that is not there', 'c.md', { kind: 'word', word: 'moon' }, null],
    ['a spelling that is not used', 'a.md', { kind: 'spelling', spelling: 'igh as in light' }, null],
    ['a lesson of the sequence', 'sequence.yaml', { kind: 'lesson', lesson: '3' }, '"3"'],
    ['a file that is no story', 'notes.md', { kind: 'story' }, null],
  ];
  test.each(cases)('%s', async (_, name, place, expected) => {
    const desk = await sit();
    const uri = uriOf(`/lane/${name}`);
    const range = await desk.connection.sendRequest<SeriesPlaceResult>(seriesPlaceRequest, { uri, place });
    await settled();
    const lines = (desk.files.get(`/lane/${name}`) ?? '').split('\n');
    const text = range && lines[range.start.line]?.slice(range.start.character, range.end.character);
    expect(text).toBe(expected);
  });
});
