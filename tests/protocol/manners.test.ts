import { describe, expect, test, vi } from 'vitest';
import { beginnersWords, handPhonics } from '../support/hand-phonics.ts';
import { smallSequence, storyAt } from '../support/small-lane.ts';
import { settled, sitDown, uriOf } from '../support/writing-desk.ts';

const files = { '/lane/sequence.yaml': smallSequence };
const path = '/lane/a.md';
const textDocument = { uri: uriOf(path) };

describe('requests', () => {
  test('before the start and after the end are refused', async () => {
    const desk = await sitDown({ asleep: true });
    await expect(desk.pull(path)).rejects.toMatchObject({ code: -32002 });
    await desk.initialize();
    await desk.connection.sendRequest('shutdown');
    await expect(desk.pull(path)).rejects.toMatchObject({ code: -32600 });
  });

  test('that nobody knows are answered as unknown, and the next is served', async () => {
    const desk = await sitDown({ files });
    await expect(desk.connection.sendRequest('battledore/dance', {})).rejects.toMatchObject({ code: -32601 });
    await desk.connection.sendNotification('battledore/sing', {});
    await desk.open(path, storyAt('2', 'Night.'));
    expect(await desk.marks(path)).toEqual(['untaught-spelling: Night']);
  });

  test('about documents that are not open are answered with nothing', async () => {
    const desk = await sitDown({ client: 'pull', files });
    const position = { line: 99, character: 99 };
    expect(await desk.pull(path)).toEqual({ kind: 'full', items: [] });
    expect(await desk.connection.sendRequest('textDocument/hover', { textDocument, position })).toBeNull();
    expect(await desk.outline(path)).toEqual([]);
  });

  test('that are cancelled are said to be', async () => {
    const desk = await sitDown({ client: 'pull', files });
    await desk.open(path, storyAt('2', 'Night.'));
    const { CancellationTokenSource } = await import('vscode-languageserver-protocol');
    const source = new CancellationTokenSource();
    const answer = desk.connection.sendRequest('textDocument/documentSymbol', { textDocument }, source.token);
    source.cancel();
    await expect(answer).rejects.toMatchObject({ code: -32800 });
    expect(await desk.outline(path)).not.toEqual([]);
  });

  test.each([
    ['textDocument/hover', { textDocument, position: null }],
    ['textDocument/completion', { textDocument: { uri: 7 }, position: { line: 0, character: 0 } }],
    ['textDocument/documentSymbol', {}],
    ['textDocument/codeAction', { textDocument, range: null, context: { diagnostics: 'all' } }],
    ['battledore/words', { uri: uriOf(path), limit: 'all' }],
    ['battledore/chain', { uri: uriOf(path), length: -1, seed: 1 }],
    ['battledore/fit', { uri: uriOf(path) }],
    ['battledore/print', { uri: null }],
    ['battledore/whatIf', { sequenceUri: {} }],
    ['battledore/checkStories', { show: 'perhaps' }],
    ['battledore/newStory', { uri: uriOf(path), title: 'A' }],
  ])('%s with %j is refused as it is, and nothing is logged', async (method, params) => {
    const desk = await sitDown({ files });
    await expect(desk.connection.sendRequest(method, params)).rejects.toMatchObject({ code: -32602 });
    expect(desk.log).toEqual([]);
  });

  test('to begin once more are refused, and the documents are still there', async () => {
    const desk = await sitDown({ files });
    await desk.open(path, storyAt('2', 'Night.'));
    await expect(desk.initialize()).rejects.toMatchObject({ code: -32600 });
    expect(await desk.outline(path)).not.toEqual([]);
  });

  test.each([
    [
      'textDocument/didOpen',
      { textDocument: { uri: undefined, languageId: 'markdown', version: 1, text: '' } },
    ],
    ['textDocument/didOpen', { textDocument: { uri: uriOf(path), version: 1, languageId: 7, text: {} } }],
    ['textDocument/didChange', { textDocument: { uri: uriOf(path), version: 2 }, contentChanges: [null] }],
    ['textDocument/didClose', { textDocument: {} }],
    ['workspace/didChangeWatchedFiles', { changes: [{ uri: 5, type: 'x' }] }],
  ])('%s with %j is logged, and what follows is served', async (method, params) => {
    const desk = await sitDown({ files });
    await desk.connection.sendNotification(method, params);
    await settled();
    expect(desk.log).toHaveLength(1);
    await desk.open('/lane/b.md', storyAt('2', 'Night.'));
    expect(await desk.marks('/lane/b.md')).toEqual(['untaught-spelling: Night']);
    expect(desk.lastGauge('/lane/b.md')).toBeDefined();
  });

  test('for places outside the text are answered', async () => {
    const desk = await sitDown({ files });
    await desk.open(path, storyAt('2', 'Night.'));
    for (const position of [
      { line: 1e9, character: 0 },
      { line: 0, character: 1e9 },
      { line: -1, character: -1 },
    ]) {
      await desk.connection.sendRequest('textDocument/hover', { textDocument, position });
    }
    expect(desk.log).toEqual([]);
  });
});

describe('one fault costs one answer', () => {
  test('and is logged once, with what was being done', async () => {
    const phonics = handPhonics(beginnersWords);
    const broken = vi.fn(() => {
      throw new Error('The word list is torn.');
    });
    const desk = await sitDown({ files, phonics: { ...phonics, readingsOf: broken } });
    await desk.open(path, storyAt('2', 'Night.'));
    await desk.edit(path, 'Night', 'Light');
    expect(broken).toHaveBeenCalled();
    expect(desk.log).toHaveLength(1);
    expect(desk.log[0]).toContain('the review of file:///lane/a.md');
    expect(desk.log[0]).toContain('The word list is torn.');
    expect(
      await desk.connection.sendRequest('textDocument/hover', {
        textDocument,
        position: { line: 3, character: 1 },
      }),
    ).toBeNull();
  });

  test('a disk that fails is as good as a file that is not there', async () => {
    const desk = await sitDown({ files });
    Object.defineProperty(desk.files, 'get', {
      value: () => {
        throw new Error('The disk is gone.');
      },
    });
    await desk.open(path, storyAt('2', 'Night.'));
    expect(await desk.marks(path)).toEqual(['sequence-problem: "2"']);
    expect(desk.log[0]).toContain('reading file:///lane/sequence.yaml');
  });
});

describe('edits out of order', () => {
  test('of a document that is not open are passed over', async () => {
    const desk = await sitDown({ files });
    await desk.connection.sendNotification('textDocument/didChange', {
      textDocument: { ...textDocument, version: 7 },
      contentChanges: [{ text: storyAt('2', 'Night.') }],
    });
    await desk.connection.sendNotification('textDocument/didClose', { textDocument });
    await settled();
    expect(desk.published).toEqual([]);
    expect(desk.log).toEqual([]);
  });

  test('with ranges outside the text, and documents opened twice, are taken as they come', async () => {
    const desk = await sitDown({ files });
    await desk.open(path, storyAt('2', 'Map.'));
    await desk.open(path, storyAt('2', 'Nap.'));
    await desk.connection.sendNotification('textDocument/didChange', {
      textDocument: { ...textDocument, version: 2 },
      contentChanges: [
        { range: { start: { line: 900, character: 0 }, end: { line: 901, character: 3 } }, text: '\nNight.' },
      ],
    });
    await settled();
    expect(desk.published.at(-1)).toMatchObject({ version: 2, diagnostics: [{ code: 'untaught-spelling' }] });
  });
});

test('a client without settings, registrations or markdown is served too', async () => {
  const desk = await sitDown({ files, asleep: true });
  await desk.connection.sendRequest('initialize', {
    processId: null,
    rootUri: uriOf('/lane'),
    capabilities: {},
    initializationOptions: { settings: { sounds: 'ipa' } },
  });
  await desk.initialized();
  await desk.open(path, storyAt('2', 'Night.'));
  expect(await desk.marks(path)).toEqual(['untaught-spelling: Night']);
  const hover = await desk.hover(path, 'Night');
  expect(hover?.contents).toMatchObject({
    kind: 'plaintext',
    value: expect.stringContaining('igh\t/aɪ/\tlight'),
  });
  const [place] = await desk.definition(path, 'Night');
  expect(place).toHaveProperty('range');
  const [page] = await desk.outline(path);
  expect(page).toHaveProperty('location');
});

test('a server without a disk asks the client for files', async () => {
  const desk = await sitDown({ asleep: true });
  const asked: string[] = [];
  desk.connection.onRequest('battledore/readFile', ({ uri }: { uri: string }) => {
    asked.push(uri);
    return uri.endsWith('/lane/sequence.yaml') ? smallSequence : null;
  });
  await desk.connection.sendRequest('initialize', {
    processId: null,
    rootUri: null,
    workspaceFolders: [{ uri: 'vscode-vfs://shelf/lane', name: 'lane' }],
    capabilities: {},
    initializationOptions: { readsFiles: true },
  });
  await desk.initialized();
  const uri = 'vscode-vfs://shelf/lane/spring/a.md';
  await desk.connection.sendNotification('textDocument/didOpen', {
    textDocument: { uri, languageId: 'markdown', version: 1, text: storyAt('2', 'Night.') },
  });
  await settled();
  expect(asked).toEqual([
    'vscode-vfs://shelf/lane/spring/sequence.yaml',
    'vscode-vfs://shelf/lane/sequence.yaml',
  ]);
  expect(desk.published.at(-1)).toMatchObject({ uri, diagnostics: [{ code: 'untaught-spelling' }] });
});
