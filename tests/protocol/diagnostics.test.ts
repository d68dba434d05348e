import { describe, expect, test } from 'vitest';
import { smallSequence, storyAt } from '../support/small-lane.ts';
import { settled, sitDown } from '../support/writing-desk.ts';

const files = { '/lane/sequence.yaml': smallSequence };
const story = storyAt('2', 'The map. Night sat.');

describe.each(['pull', 'push'] as const)('a client that has its diagnostics by %s', (client) => {
  test('sees the words a child cannot read yet', async () => {
    const desk = await sitDown({ client, files });
    await desk.open('/lane/a.md', story);
    expect(await desk.marks('/lane/a.md')).toEqual(['untaught-spelling: Night']);
    const [diagnostic] = await desk.diagnostics('/lane/a.md');
    expect(diagnostic).toMatchObject({ source: 'battledore', code: 'untaught-spelling', severity: 2 });
    expect(diagnostic).not.toHaveProperty('codeDescription');
  });

  test('sees the marks follow an edit', async () => {
    const desk = await sitDown({ client, files });
    await desk.open('/lane/a.md', story);
    await desk.edit('/lane/a.md', 'Night', 'Nap');
    await desk.edit('/lane/a.md', 'map.', 'light map.');
    expect(await desk.marks('/lane/a.md')).toEqual(['untaught-spelling: light']);
  });

  test('is left alone with markdown that is no story', async () => {
    const desk = await sitDown({ client, files });
    await desk.open('/lane/readme.md', '# Night\n\nLight.\n');
    expect(await desk.marks('/lane/readme.md')).toEqual([]);
    expect(desk.lastGauge('/lane/readme.md')).toMatchObject({ reason: 'not-a-story', version: 1 });
  });

  test('sees what is wrong in a sequence, at its place', async () => {
    const desk = await sitDown({ client, files });
    await desk.open('/lane/sequence.yaml', smallSequence.replace('igh as in light', 'igh as in sit'));
    expect(await desk.marks('/lane/sequence.yaml')).toEqual(['sequence-problem: igh as in sit']);
  });
});

describe('never both ways', () => {
  test('nothing is sent to a client that pulls', async () => {
    const desk = await sitDown({ client: 'pull', files });
    await desk.open('/lane/a.md', story);
    await desk.edit('/lane/a.md', 'Night', 'Light');
    await desk.close('/lane/a.md');
    expect(desk.published).toEqual([]);
  });

  test('pulling is not offered to a client that is sent its diagnostics', async () => {
    const pulling = await sitDown({ client: 'pull', asleep: true });
    const sent = await sitDown({ client: 'push', asleep: true });
    expect((await pulling.initialize()).capabilities.diagnosticProvider).toBeDefined();
    expect((await sent.initialize()).capabilities.diagnosticProvider).toBeUndefined();
  });
});

test('what a client that pulls has already is not sent again', async () => {
  const desk = await sitDown({ client: 'pull', files });
  await desk.open('/lane/a.md', story);
  const first = await desk.pull('/lane/a.md');
  expect(await desk.pull('/lane/a.md', first.resultId)).toEqual({
    kind: 'unchanged',
    resultId: first.resultId,
  });
  await desk.edit('/lane/a.md', 'Night', 'Nap');
  expect(await desk.pull('/lane/a.md', first.resultId)).toMatchObject({ kind: 'full', items: [] });
});

describe('a burst of changes', () => {
  test.each(['pull', 'push'] as const)('is reviewed once (%s)', async (client) => {
    const desk = await sitDown({ client, files });
    await desk.open('/lane/a.md', story);
    const before = desk.server.runs;
    const published = desk.published.length;
    const pulls = [];
    for (const sign of 'pan nap tap tan') {
      desk.send('/lane/a.md', 'Night', `${sign}Night`);
      if (client === 'pull') pulls.push(desk.pull('/lane/a.md'));
    }
    await Promise.all(pulls);
    await settled();
    expect(desk.server.runs - before).toBe(1);
    if (client === 'push') expect(desk.published.length - published).toBe(1);
  });

  test('is followed by diagnostics of its last version only', async () => {
    const desk = await sitDown({ client: 'push', files });
    await desk.open('/lane/a.md', story);
    for (let round = 0; round < 10; round++) desk.send('/lane/a.md', 'Night', 'Nap Night');
    await settled();
    const versions = desk.published.map(({ version }) => version);
    expect(versions).toEqual([1, 11]);
    await desk.clock.pass(100);
    expect(desk.gauges.map(({ version }) => version)).toEqual([1, 11]);
  });

  test('sends a gauge at once, then one each tenth of a second at most, and the last one always', async () => {
    const desk = await sitDown({ client: 'push', files });
    await desk.open('/lane/a.md', story);
    await desk.clock.pass(100);
    for (let round = 0; round < 5; round++) await desk.edit('/lane/a.md', 'Night', 'Nap Night');
    expect(desk.gauges.map(({ version }) => version)).toEqual([1, 2]);
    await desk.clock.pass(100);
    expect(desk.gauges.map(({ version }) => version)).toEqual([1, 2, 6]);
    await desk.clock.pass(1000);
    expect(desk.gauges).toHaveLength(3);
  });

  test('over several documents is reviewed once for each', async () => {
    const desk = await sitDown({ client: 'push', files });
    await desk.open('/lane/a.md', story);
    await desk.open('/lane/b.md', story);
    const before = desk.server.runs;
    for (let round = 0; round < 5; round++) {
      desk.send('/lane/a.md', 'Night', 'Nap Night');
      desk.send('/lane/b.md', 'Night', 'Nap Night');
    }
    await settled();
    expect(desk.server.runs - before).toBe(2);
  });
});

test('a run that a change overtakes while the sequence is read publishes nothing', async () => {
  const desk = await sitDown({ client: 'push', files });
  const uri = 'file:///lane/a.md';
  const textDocument = { uri, languageId: 'markdown', version: 1, text: story };
  void desk.connection.sendNotification('textDocument/didOpen', { textDocument });
  void desk.connection.sendNotification('textDocument/didChange', {
    textDocument: { uri, version: 2 },
    contentChanges: [{ text: storyAt('2', 'Light.') }],
  });
  void desk.connection.sendNotification('textDocument/didClose', { textDocument: { uri } });
  await settled();
  expect(desk.published).toEqual([]);
  expect(desk.gauges).toEqual([]);
});

test('closing a story takes its marks away', async () => {
  const desk = await sitDown({ client: 'push', files });
  await desk.open('/lane/a.md', story);
  await desk.close('/lane/a.md');
  expect(desk.published.at(-1)).toMatchObject({ uri: 'file:///lane/a.md', diagnostics: [] });
});

test('nothing is remembered of closed documents', async () => {
  const desk = await sitDown({ client: 'push', files });
  for (let round = 0; round < 50; round++) {
    await desk.open(`/lane/${round}/a.md`, storyAt('2', 'Night.', 'sequence: ../other.yaml\n'));
    await desk.open(`/lane/${round}/sequence.yaml`, smallSequence);
    await desk.edit(`/lane/${round}/a.md`, 'Night', 'Light');
  }
  expect(desk.server.remembered).toBeGreaterThan(100);
  for (let round = 0; round < 50; round++) {
    await desk.close(`/lane/${round}/a.md`);
    await desk.close(`/lane/${round}/sequence.yaml`);
  }
  expect(desk.server.remembered).toBe(0);
}, 30_000);
