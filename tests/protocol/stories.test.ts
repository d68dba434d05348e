import { describe, expect, test } from 'vitest';
import {
  type CheckStoriesResult,
  checkStoriesRequest,
  type WhatIfResult,
  whatIfRequest,
} from '../../server/src/editor/protocol.ts';
import { packagePhonics } from '../support/package-phonics.ts';
import { smallSequence, storyAt } from '../support/small-lane.ts';
import { type Desk, sitDown, uriOf } from '../support/writing-desk.ts';

const sequence = smallSequence.replace('readable: 0', 'readable: 95');
/** The same, and the spelling of night comes a lesson later. */
const laterSequence = sequence
  .replace('spellings: [igh as in light]', 'spellings: [d as in dot]')
  .replace('ck as in lock', 'igh as in light, ck as in lock');
const files = {
  '/lane/sequence.yaml': sequence,
  '/lane/a.md': storyAt('1', '# Map\n\nThe map sat.'),
  '/lane/b.md': storyAt('3', '# Night\n\nNight sat.'),
  '/lane/c.md': storyAt('1', '# Nap\n\nNight sat.'),
  '/lane/notes.md': '# Notes\n',
};

const sit = (more: Readonly<Record<string, string>> = {}, client: 'pull' | 'push' = 'push'): Promise<Desk> =>
  sitDown({ listsFiles: true, phonics: packagePhonics, client, files: { ...files, ...more } });

const check = (desk: Desk, show: boolean): Promise<CheckStoriesResult> =>
  desk.connection.sendRequest(checkStoriesRequest, { show });

/** What was last told of all stories, in short. */
function told(desk: Desk) {
  const last = desk.stories.at(-1);
  return {
    stories: last?.stories,
    failing: last?.failing.map(({ uri, why }) => `${uri}: ${why}`),
    turned: last?.turned.map(({ uri, turn }) => `${uri} ${turn}`),
  };
}

describe('the stories of the workspace, none of them open', () => {
  test('are told once at the start, and no single finding is shown', async () => {
    const desk = await sit();
    expect(desk.stories).toHaveLength(1);
    expect(told(desk)).toEqual({
      stories: 3,
      failing: [`${uriOf('/lane/c.md')}: 50.0 % readable, target 95 %`],
      turned: [],
    });
    expect(desk.published).toEqual([]);
  });

  test('are not read where there is no sequence', async () => {
    const desk = await sitDown({
      listsFiles: true,
      phonics: packagePhonics,
      files: { '/lane/a.md': files['/lane/a.md'] },
    });
    expect(desk.reads).toEqual([]);
    await desk.changeFile('/lane/sequence.yaml', sequence);
    await desk.clock.pass(300);
    expect(told(desk)).toMatchObject({ stories: 1, failing: [] });
  });

  test.each(['on disk', 'in the editor'])('a change to one lesson %s shows which fail now', async (where) => {
    const desk = await sit();
    if (where === 'on disk') await desk.changeFile('/lane/sequence.yaml', laterSequence);
    else {
      await desk.open('/lane/sequence.yaml', sequence);
      await desk.edit('/lane/sequence.yaml', sequence, laterSequence);
    }
    await desk.clock.pass(300);
    expect(told(desk)).toEqual({
      stories: 3,
      failing: [
        `${uriOf('/lane/b.md')}: 50.0 % readable, target 95 %`,
        `${uriOf('/lane/c.md')}: 50.0 % readable, target 95 %`,
      ],
      turned: [`${uriOf('/lane/b.md')} loses`],
    });
  });

  test('a change that concerns no story is not told', async () => {
    const desk = await sit();
    await desk.changeFile('/lane/sequence.yaml', `${sequence}  - name: "5"\n    spellings: [d as in dot]\n`);
    await desk.changeFile('/lane/a.md', storyAt('1', '# Map\n\nThe map sat. The map sat.'));
    await desk.clock.pass(300);
    expect(desk.stories).toHaveLength(1);
  });

  test('only what changed is read again', async () => {
    const desk = await sit();
    desk.reads.length = 0;
    await desk.changeFile('/lane/c.md', storyAt('3', '# Nap\n\nNight sat.'));
    await desk.clock.pass(300);
    expect(desk.reads).toEqual(['/lane/c.md']);
    expect(told(desk)).toEqual({ stories: 3, failing: [], turned: [`${uriOf('/lane/c.md')} gains`] });
  });

  test.each([
    ['a new one', '/lane/d.md', storyAt('1', 'Night sat.'), 4, 2],
    ['one that vanishes', '/lane/c.md', null, 2, 0],
    ['one that is no story any more', '/lane/c.md', '# Notes\n', 2, 0],
    ['one without its lesson', '/lane/a.md', storyAt('9', 'The map sat.'), 3, 2],
    ['one in a hidden folder', '/lane/.trash/d.md', storyAt('1', 'Night sat.'), 3, 1],
  ])('%s is taken in', async (_, path, text, stories, failing) => {
    const desk = await sit();
    await desk.changeFile(path, text);
    await desk.clock.pass(300);
    expect(desk.stories.at(-1)).toMatchObject({ stories });
    expect(desk.stories.at(-1)?.failing).toHaveLength(failing);
  });

  test('an open story counts as the editor has it, and again as the disk has it when it is closed', async () => {
    const desk = await sit();
    await desk.open('/lane/a.md', files['/lane/a.md']);
    await desk.edit('/lane/a.md', 'The map sat.', 'Night sat.');
    await desk.clock.pass(300);
    expect(told(desk).turned).toEqual([`${uriOf('/lane/a.md')} loses`]);
    await desk.close('/lane/a.md');
    await desk.clock.pass(300);
    expect(told(desk).turned).toEqual([`${uriOf('/lane/a.md')} gains`]);
  });

  test('follow the sequence they name, and the nearest else', async () => {
    const desk = await sit({
      '/lane/other.yaml': sequence.replace('igh as in light', 'd as in dot'),
      '/lane/d.md': storyAt('3', 'Night sat.', 'sequence: other.yaml\n'),
      '/lane/e.md': storyAt('3', 'Night sat.', 'sequence: ../../outside.yaml\n'),
    });
    expect(told(desk)).toMatchObject({ stories: 4 });
    expect(desk.stories.at(-1)?.failing.map(({ uri }) => uri)).toEqual([
      uriOf('/lane/c.md'),
      uriOf('/lane/d.md'),
    ]);
  });
});

describe('the command to check all stories', () => {
  test('shows what is found in closed stories, and takes it away again', async () => {
    const desk = await sit();
    expect(await check(desk, true)).toEqual({ stories: 3, failing: 1 });
    expect((await desk.diagnostics('/lane/c.md')).map(({ code }) => code)).toEqual([
      'under-target',
      'untaught-spelling',
    ]);
    await check(desk, false);
    expect(await desk.diagnostics('/lane/c.md')).toEqual([]);
  });

  test('keeps them current, and hands over to the document when it is opened', async () => {
    const desk = await sit({}, 'pull');
    await check(desk, true);
    const shown = () =>
      desk.published.filter(({ uri }) => uri === uriOf('/lane/c.md')).at(-1)?.diagnostics.length;
    expect(shown()).toBe(2);
    await desk.open('/lane/c.md', files['/lane/c.md']);
    expect(shown()).toBe(0);
    expect(await desk.marks('/lane/c.md')).toHaveLength(2);
    await desk.close('/lane/c.md');
    await desk.clock.pass(300);
    expect(shown()).toBe(2);
    await desk.changeFile('/lane/c.md', null);
    await desk.clock.pass(300);
    expect(shown()).toBe(0);
  });
});

describe('what if', () => {
  const whatIf = (desk: Desk, text?: string): Promise<WhatIfResult | null> =>
    desk.connection.sendRequest(whatIfRequest, { sequenceUri: uriOf('/lane/sequence.yaml'), text });

  test('a lesson is changed: the stories that gain and lose, with nothing told or shown', async () => {
    const desk = await sit();
    const result = await whatIf(desk, laterSequence);
    expect(result).toMatchObject({
      stories: 3,
      changed: [
        { uri: uriOf('/lane/b.md'), turn: 'loses', before: { passes: true }, after: { readable: 0.5 } },
      ],
    });
    expect(desk.stories).toHaveLength(1);
    expect(await whatIf(desk, sequence)).toEqual({ stories: 3, changed: [] });
  });

  test('a sequence is edited and not saved: compared with the saved one', async () => {
    const desk = await sit();
    await desk.open('/lane/sequence.yaml', sequence);
    await desk.edit('/lane/sequence.yaml', sequence, laterSequence);
    await desk.clock.pass(300);
    expect((await whatIf(desk))?.changed.map(({ title, turn }) => `${title} ${turn}`)).toEqual([
      'Night loses',
    ]);
    await desk.changeFile('/lane/sequence.yaml', laterSequence);
    expect((await whatIf(desk))?.changed).toEqual([]);
  });

  test('there is no such file', async () => {
    const desk = await sit();
    expect(
      await desk.connection.sendRequest(whatIfRequest, {
        sequenceUri: uriOf('/lane/none.yaml'),
        text: sequence,
      }),
    ).toBeNull();
  });
});

test('nothing of it happens where no files can be listed', async () => {
  const desk = await sitDown({ files });
  expect(desk.stories).toEqual([]);
  expect(await check(desk, true)).toBeNull();
});
