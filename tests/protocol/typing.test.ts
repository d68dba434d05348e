import { describe, expect, test } from 'vitest';
import { smallSequence, storyAt } from '../support/small-lane.ts';
import { sitDown } from '../support/writing-desk.ts';

const files = { '/lane/sequence.yaml': smallSequence };
const path = '/lane/a.md';

describe.each(['pull', 'push'] as const)('a word that is being typed (%s)', (client) => {
  const typed = async (text: string) => {
    const desk = await sitDown({ client, files });
    await desk.open(path, storyAt('2', 'The map sat.'));
    await desk.type(path, 'The map sat.', text);
    return desk;
  };

  test.each([
    [' nigh', []],
    [' night', []],
    [" night'", []],
    [' night.', ['untaught-spelling: night']],
    [' night ', ['untaught-spelling: night']],
    [' night,', ['untaught-spelling: night']],
    [' night na', ['untaught-spelling: night']],
  ] as const)('after “%s” marks %j', async (text, marks) => {
    expect(await (await typed(text)).marks(path)).toEqual(marks);
  });

  test('is marked after a second without a change', async () => {
    const desk = await typed(' night');
    await desk.clock.pass(999);
    expect(await desk.marks(path)).toEqual([]);
    await desk.clock.pass(1);
    expect(desk.refreshes).toBe(client === 'pull' ? 1 : 0);
    expect(await desk.marks(path)).toEqual(['untaught-spelling: night']);
  });

  test('has its second anew with every letter', async () => {
    const desk = await typed(' nigh');
    await desk.clock.pass(900);
    await desk.type(path, ' nigh', 't');
    await desk.clock.pass(900);
    expect(await desk.marks(path)).toEqual([]);
  });

  test('is held back alone: the marks on other words stay', async () => {
    const desk = await sitDown({ client, files });
    await desk.open(path, storyAt('2', 'Light. The map sat.'));
    await desk.type(path, 'sat.', ' night');
    expect(await desk.marks(path)).toEqual(['untaught-spelling: Light']);
  });

  test('is held back too when letters are deleted at its end', async () => {
    const desk = await sitDown({ client, files });
    await desk.open(path, storyAt('2', 'The nightly map.'));
    await desk.edit(path, 'ly', '');
    expect(await desk.marks(path)).toEqual([]);
    await desk.clock.pass(1000);
    expect(await desk.marks(path)).toEqual(['untaught-spelling: night']);
  });

  test('is counted by the gauge all the same', async () => {
    const desk = await typed(' night');
    await desk.clock.pass(100);
    expect(desk.lastGauge(path)).toMatchObject({ gauge: { counts: { 'not-taught': 1 } } });
  });

  test('is marked when the change was in its middle', async () => {
    const desk = await sitDown({ client, files });
    await desk.open(path, storyAt('2', 'The nght.'));
    await desk.edit(path, 'ng', 'nig');
    expect(await desk.marks(path)).toEqual(['untaught-spelling: night']);
  });
});

test('nothing is asked of a client when the pause ends and nothing was held back', async () => {
  const desk = await sitDown({ client: 'pull', files });
  await desk.open(path, storyAt('2', 'The map sat.'));
  await desk.type(path, 'sat.', ' map');
  await desk.clock.pass(5000);
  expect(desk.refreshes).toBe(0);
});

test('nothing is left to do when a document is closed while a word is being typed', async () => {
  const desk = await sitDown({ client: 'push', files });
  await desk.open(path, storyAt('2', 'The map sat.'));
  await desk.type(path, 'sat.', ' night');
  await desk.close(path);
  const published = desk.published.length;
  await desk.clock.pass(5000);
  expect(desk.published).toHaveLength(published);
  expect(desk.server.remembered).toBe(0);
});
