import { describe, expect, test } from 'vitest';
import { smallSequence, storyAt } from '../support/small-lane.ts';
import { sitDown, uriOf } from '../support/writing-desk.ts';

/** The same lessons, and night can be read at lesson 2. */
const generousSequence = smallSequence.replace(
  '- name: "2"',
  '- name: "2"\n    high-frequency words: [night]',
);
const story = storyAt('2', 'Night sat.');
const marked = ['untaught-spelling: Night'];

describe('the sequence of a story', () => {
  test.each([
    ['beside it', '/lane/spring/sequence.yaml'],
    ['in the folder above', '/lane/sequence.yaml'],
  ])('is found %s', async (_, path) => {
    const desk = await sitDown({ files: { [path]: generousSequence } });
    await desk.open('/lane/spring/a.md', story);
    expect(desk.lastGauge('/lane/spring/a.md')).toMatchObject({
      gauge: { lesson: { sequenceUri: uriOf(path) } },
    });
  });

  test('is the nearest of several', async () => {
    const files = {
      '/lane/sequence.yaml': smallSequence,
      '/lane/spring/sequence.yaml': generousSequence,
    };
    const desk = await sitDown({ files });
    await desk.open('/lane/spring/a.md', story);
    await desk.open('/lane/b.md', story);
    expect(await desk.marks('/lane/spring/a.md')).toEqual([]);
    expect(await desk.marks('/lane/b.md')).toEqual(marked);
  });

  test('is never looked for above the workspace folder', async () => {
    const desk = await sitDown({ files: { '/sequence.yaml': generousSequence } });
    await desk.open('/lane/spring/a.md', story);
    expect(await desk.marks('/lane/spring/a.md')).toEqual(['sequence-problem: "2"']);
    expect(desk.reads.slice(0, 2)).toEqual(['/lane/spring/sequence.yaml', '/lane/sequence.yaml']);
    expect(desk.reads.every((read) => read.startsWith('/lane/'))).toBe(true);
  });

  test('is that of its own folder where several are open', async () => {
    const desk = await sitDown({
      folders: ['/lane', '/hill', '/lane/far'],
      files: { '/lane/sequence.yaml': smallSequence, '/hill/sequence.yaml': generousSequence },
    });
    await desk.open('/lane/a.md', story);
    await desk.open('/hill/a.md', story);
    await desk.open('/lane/far/a.md', story);
    expect(await desk.marks('/lane/a.md')).toEqual(marked);
    expect(await desk.marks('/hill/a.md')).toEqual([]);
    // The innermost workspace folder is the limit, even inside another one.
    expect(await desk.marks('/lane/far/a.md')).toEqual(['sequence-problem: "2"']);
  });

  test('can be another file, named in the front matter', async () => {
    const files = { '/lane/sequence.yaml': smallSequence, '/lane/plans/my plan.yaml': generousSequence };
    const desk = await sitDown({ files });
    await desk.open('/lane/spring/a.md', storyAt('2', 'Night sat.', 'sequence: ../plans/my plan.yaml\n'));
    expect(await desk.marks('/lane/spring/a.md')).toEqual([]);
  });

  test.each([
    ['../../other/sequence.yaml', 'leads out of the workspace folder'],
    ['/etc/sequence.yaml', 'is not a relative path'],
    ['file:///etc/sequence.yaml', 'is not a relative path'],
    ['plan.txt', 'cannot be a sequence file'],
    ['plan.yaml', 'There is no file'],
  ])('named as %s is a problem at its place', async (path, message) => {
    const files = { '/lane/sequence.yaml': smallSequence, '/etc/sequence.yaml': generousSequence };
    const desk = await sitDown({ files });
    await desk.open('/lane/spring/a.md', storyAt('2', 'Night sat.', `sequence: ${path}\n`));
    expect(await desk.marks('/lane/spring/a.md')).toEqual([`front-matter-problem: ${path}`]);
    expect((await desk.messages('/lane/spring/a.md'))[0]).toContain(message);
    expect(desk.reads.every((read) => read.startsWith('/lane/'))).toBe(true);
  });

  test('that is nowhere is said once, with what to do, and to the gauge', async () => {
    const desk = await sitDown();
    await desk.open('/lane/a.md', story);
    expect(await desk.messages('/lane/a.md')).toEqual([
      'No sequence.yaml was found beside this story or in a folder above it, up to the workspace folder, so the story is not checked. Create one, or name one with “sequence:” in the front matter.',
    ]);
    expect((await desk.diagnostics('/lane/a.md'))[0]?.severity).toBe(3);
    expect(desk.lastGauge('/lane/a.md')).toMatchObject({ reason: 'no-sequence' });
  });

  test.each(['sequence.yml', 'Sequence.yml', 'sequences.yaml'])('that is named %s is named', async (name) => {
    const desk = await sitDown({ files: { [`/lane/${name}`]: smallSequence } });
    await desk.open('/lane/spring/a.md', story);
    const message = `There is a file “${name}”; rename it to sequence.yaml`;
    expect((await desk.messages('/lane/spring/a.md'))[0]).toContain(message);
    expect(desk.lastGauge('/lane/spring/a.md')).toMatchObject({ message: expect.stringContaining(message) });
    await desk.changeFile(`/lane/${name}`, null);
    expect((await desk.messages('/lane/spring/a.md'))[0]).not.toContain(name);
    await desk.changeFile(`/lane/${name}`, smallSequence);
    expect((await desk.messages('/lane/spring/a.md'))[0]).toContain(message);
  });

  test('without the lesson is a problem that names the nearest ones', async () => {
    const desk = await sitDown({ files: { '/lane/sequence.yaml': smallSequence } });
    await desk.open('/lane/a.md', storyAt('12', 'Night sat.'));
    expect(await desk.messages('/lane/a.md')).toEqual([
      'sequence.yaml has no lesson “12”, so the story is not checked. The nearest names are “4”, “3” and “2”.',
    ]);
    expect(desk.lastGauge('/lane/a.md')).toMatchObject({ reason: 'no-such-lesson' });
  });
});

test('curly quotation marks around a lesson, in the story or the sequence, are left out', async () => {
  const sequence = smallSequence.replace('name: "2"', 'name: “2”');
  const desk = await sitDown({ files: { '/lane/sequence.yaml': sequence } });
  await desk.open('/lane/a.md', story.replace('"2"', '“2”'));
  expect(desk.lastGauge('/lane/a.md')).toMatchObject({ gauge: { lesson: { name: '2' } } });
  expect(await desk.marks('/lane/a.md')).toEqual(marked);
});

describe('a lesson that is nearly named', () => {
  test.each(['pull', 'push'] as const)('is a hint with a quick fix: %s', async (client) => {
    const desk = await sitDown({ client, files: { '/lane/sequence.yaml': smallSequence } });
    await desk.open('/lane/a.md', story.replace('lesson', 'Lesson'));
    expect(await desk.marks('/lane/a.md')).toEqual(['front-matter-problem: Lesson']);
    expect((await desk.diagnostics('/lane/a.md'))[0]?.severity).toBe(3);
    expect(desk.lastGauge('/lane/a.md')).toMatchObject({
      reason: 'not-a-story',
      message: expect.stringContaining('“lesson:”'),
    });
    const [fix, ...more] = await desk.fixes('/lane/a.md', 'Lesson');
    expect(more).toEqual([]);
    expect(fix).toMatchObject({ title: 'Write “lesson”', isPreferred: true });
    expect(fix && desk.after('/lane/a.md', fix)).toBe(story);
  });

  test('is none in plain markdown', async () => {
    const desk = await sitDown({ files: { '/lane/sequence.yaml': smallSequence } });
    await desk.open('/lane/notes.md', '# Notes\n\nThe lesson: read.\n');
    expect(await desk.marks('/lane/notes.md')).toEqual([]);
    expect(await desk.fixes('/lane/notes.md', 'lesson')).toEqual([]);
  });
});

test('a key that is nearly right can be written as it is meant', async () => {
  const desk = await sitDown({ files: { '/lane/sequence.yaml': smallSequence } });
  await desk.open('/lane/a.md', storyAt('2', 'The map sat.', 'Names: [Map]\n'));
  const fixes = await desk.fixes('/lane/a.md', 'Names');
  expect(fixes.map(({ title }) => title)).toEqual(['Write “names”', 'Remove “Names”']);
  expect(fixes[0] && desk.after('/lane/a.md', fixes[0])).toContain('\nnames: [Map]\n');
});

test('an indented line that markdown takes for code is marked, with a quick fix', async () => {
  const desk = await sitDown({ files: { '/lane/sequence.yaml': smallSequence } });
  await desk.open('/lane/a.md', storyAt('2', 'The map sat.\n\n    Pip sat.'));
  expect(await desk.marks('/lane/a.md')).toEqual(['front-matter-problem: Pip sat.']);
  const [fix] = await desk.fixes('/lane/a.md', 'Pip sat.');
  expect(fix?.title).toBe('Take the indent away');
  expect(fix && desk.after('/lane/a.md', fix)).toBe(storyAt('2', 'The map sat.\n\nPip sat.'));
});

test.each([
  ['lesson: "Lesson 2"', ['2', '1', '3'], true],
  ['lesson: 99', ['4', '3', '2'], false],
])('a lesson that the sequence does not have can be written anew: %s', async (line, lessons, isSure) => {
  const desk = await sitDown({ files: { '/lane/sequence.yaml': smallSequence } });
  await desk.open('/lane/a.md', `---\n${line}\n---\nThe map.\n`);
  const value = line.replace('lesson: ', '');
  const fixes = await desk.fixes('/lane/a.md', value);
  expect(fixes.map(({ title }) => title)).toEqual(lessons.map((name) => `Write lesson “${name}”`));
  expect(fixes[0]?.isPreferred === true).toBe(isSure);
  expect(fixes[0] && desk.after('/lane/a.md', fixes[0])).toBe(
    `---\nlesson: "${lessons[0]}"\n---\nThe map.\n`,
  );
});

test('the brackets that a picture lacks are written by a quick fix', async () => {
  const desk = await sitDown({ files: { '/lane/sequence.yaml': smallSequence } });
  await desk.open('/lane/a.md', storyAt('2', '![A map]\n\nThe map sat.'));
  const [fix] = await desk.fixes('/lane/a.md', '![A map]');
  expect(fix?.title).toBe('Write () behind the note of the picture');
  expect(fix && desk.after('/lane/a.md', fix)).toBe(storyAt('2', '![A map]()\n\nThe map sat.'));
});

test.each(['lesson:', 'lesson: ""', 'lesson: [1]'])(
  'a story with “%s” has one message, that it needs the name of a lesson',
  async (line) => {
    const desk = await sitDown({ files: { '/lane/sequence.yaml': smallSequence } });
    await desk.open('/lane/a.md', `---\n${line}\n---\nNight.\n`);
    expect(await desk.messages('/lane/a.md')).toHaveLength(1);
    expect((await desk.marks('/lane/a.md'))[0]).toMatch(/^front-matter-problem/);
    expect(desk.lastGauge('/lane/a.md')).toMatchObject({ reason: 'no-such-lesson' });
  },
);

describe.each(['pull', 'push'] as const)('a change of the sequence (%s)', (client) => {
  const sittingAt = async () => {
    const desk = await sitDown({ client, files: { '/lane/sequence.yaml': smallSequence } });
    await desk.open('/lane/a.md', story);
    await desk.open('/lane/b.md', story);
    return desk;
  };

  test('in the editor, not saved, is followed by all open stories at once', async () => {
    const desk = await sittingAt();
    await desk.open('/lane/sequence.yaml', smallSequence);
    const asked = desk.refreshes;
    await desk.edit('/lane/sequence.yaml', '- name: "2"', '- name: "2"\n    high-frequency words: [night]');
    if (client === 'pull') expect(desk.refreshes).toBeGreaterThan(asked);
    expect(await desk.marks('/lane/a.md')).toEqual([]);
    expect(await desk.marks('/lane/b.md')).toEqual([]);
    await desk.clock.pass(100);
    expect(desk.lastGauge('/lane/b.md')).toMatchObject({ gauge: { counts: { 'not-taught': 0 } } });
  });

  test('in the editor is forgotten when it is closed without being saved', async () => {
    const desk = await sittingAt();
    await desk.open('/lane/sequence.yaml', generousSequence);
    expect(await desk.marks('/lane/a.md')).toEqual([]);
    await desk.close('/lane/sequence.yaml');
    expect(await desk.marks('/lane/a.md')).toEqual(marked);
  });

  test('on disk is followed', async () => {
    const desk = await sittingAt();
    await desk.changeFile('/lane/sequence.yaml', generousSequence);
    expect(await desk.marks('/lane/a.md')).toEqual([]);
  });

  test('on disk does not count while the file is open in the editor', async () => {
    const desk = await sittingAt();
    await desk.open('/lane/sequence.yaml', smallSequence);
    await desk.changeFile('/lane/sequence.yaml', generousSequence);
    expect(await desk.marks('/lane/a.md')).toEqual(marked);
  });

  test('that takes it away and brings it back is followed', async () => {
    const desk = await sittingAt();
    await desk.changeFile('/lane/sequence.yaml', null);
    expect(await desk.marks('/lane/a.md')).toEqual(['sequence-problem: "2"']);
    await desk.changeFile('/lane/sequence.yaml', smallSequence);
    expect(await desk.marks('/lane/a.md')).toEqual(marked);
  });

  test('that creates a nearer one is followed', async () => {
    const desk = await sitDown({ client, files: { '/lane/sequence.yaml': smallSequence } });
    await desk.open('/lane/spring/a.md', story);
    await desk.changeFile('/lane/spring/sequence.yaml', generousSequence);
    expect(await desk.marks('/lane/spring/a.md')).toEqual([]);
  });

  test('that leaves its text as it was reviews nothing anew', async () => {
    const desk = await sittingAt();
    const { runs } = desk.server;
    await desk.changeFile('/lane/sequence.yaml', smallSequence);
    expect(desk.server.runs).toBe(runs);
  });

  test('of another YAML file reviews nothing anew', async () => {
    const desk = await sittingAt();
    await desk.open('/lane/other.yaml', 'lessons: 3');
    const { runs } = desk.server;
    await desk.edit('/lane/other.yaml', '3', '4');
    expect(desk.server.runs).toBe(runs);
    expect(await desk.marks('/lane/other.yaml')).toEqual([]);
  });
});

test('a YAML file that a story names is checked as a sequence as long as it is named', async () => {
  const desk = await sitDown();
  await desk.open('/lane/plan.yaml', smallSequence.replace('igh as in light', 'igh as in sit'));
  expect(await desk.marks('/lane/plan.yaml')).toEqual([]);
  await desk.open('/lane/a.md', storyAt('2', 'Night sat.', 'sequence: plan.yaml\n'));
  expect(await desk.marks('/lane/plan.yaml')).toEqual(['sequence-problem: igh as in sit']);
  await desk.close('/lane/a.md');
  expect(await desk.marks('/lane/plan.yaml')).toEqual([]);
});

test('addresses that are escaped in different ways are one file', async () => {
  const desk = await sitDown({ folders: ['/lane (1)'], files: {} });
  const textDocument = { languageId: 'yaml', version: 1, uri: 'file:///lane%20%281%29/sequence.yaml' };
  await desk.connection.sendNotification('textDocument/didOpen', {
    textDocument: { ...textDocument, text: generousSequence },
  });
  await desk.open('/lane (1)/a.md', story);
  expect(await desk.marks('/lane (1)/a.md')).toEqual([]);
});

test('a draft that was never saved is reviewed by the sequence at the top of the workspace folder', async () => {
  const desk = await sitDown({ files: { '/lane/sequence.yaml': smallSequence } });
  const uri = 'untitled:Untitled-1';
  await desk.connection.sendNotification('textDocument/didOpen', {
    textDocument: { uri, languageId: 'markdown', version: 1, text: story },
  });
  await desk.clock.pass(0);
  expect(desk.gauges.at(-1)).toMatchObject({ uri, gauge: { counts: { 'not-taught': 1 } } });
});

test('folders that come and go are followed', async () => {
  const desk = await sitDown({ folders: [], files: { '/lane/sequence.yaml': generousSequence } });
  await desk.open('/lane/spring/a.md', story);
  expect(await desk.marks('/lane/spring/a.md')).toEqual(['sequence-problem: "2"']);
  desk.connection.onRequest('workspace/workspaceFolders', () => [{ uri: uriOf('/lane'), name: 'lane' }]);
  const event = { added: [{ uri: uriOf('/lane'), name: 'lane' }], removed: [] };
  await desk.connection.sendNotification('workspace/didChangeWorkspaceFolders', { event });
  await desk.clock.pass(0);
  expect(await desk.marks('/lane/spring/a.md')).toEqual([]);
});

test('the gauge knows of a text that is too long to be read to its end', async () => {
  const desk = await sitDown({ files: { '/lane/sequence.yaml': smallSequence } });
  await desk.open('/lane/a.md', storyAt('1', 'The map.\n'.repeat(20_001)));
  await desk.open('/lane/b.md', storyAt('1', 'The map.\n'));
  // The gauge of a long text waits a moment.
  await desk.clock.pass(1000);
  expect(desk.lastGauge('/lane/a.md')).toMatchObject({ gauge: { isCut: true } });
  expect(desk.lastGauge('/lane/b.md')).not.toHaveProperty('gauge.isCut');
});
