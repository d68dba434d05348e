import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { createContext, runInContext } from 'node:vm';
import { expect, test } from 'vitest';
import { packagePhonics } from '../support/package-phonics.ts';
import { smallSequence, storyAt } from '../support/small-lane.ts';
import { sitDown } from '../support/writing-desk.ts';

const script = fileURLToPath(new URL('../../server/dist/browser.js', import.meta.url));
const meanings = fileURLToPath(new URL('../../server/dist/meanings.bin', import.meta.url));
const lexicon = fileURLToPath(new URL('../../server/dist/words.bin', import.meta.url));
const samples = fileURLToPath(new URL('../../samples', import.meta.url));

interface Message {
  readonly id?: number;
  readonly method?: string;
  readonly params?: unknown;
  readonly result?: unknown;
}

/** A worker's world: what every browser gives a worker, and nothing of Node. */
class WorkerWorld {
  readonly sent: Message[] = [];
  readonly #scope: { onmessage?: (event: { data: unknown }) => void } & Record<string, unknown>;
  #wake: (() => void) | undefined;

  constructor() {
    if (!existsSync(script)) throw new Error('The server is not built; run "npm run build" first.');
    const answerOnce = (message: Message): void => {
      this.sent.push(message);
      this.#wake?.();
    };
    this.#scope = {
      setTimeout,
      clearTimeout,
      setInterval,
      clearInterval,
      queueMicrotask,
      TextDecoder,
      TextEncoder,
      MessageEvent,
      URL,
      performance,
      console,
      addEventListener: () => undefined,
      dispatchEvent: (event: { data: unknown }) => this.#scope.onmessage?.(event),
      postMessage: answerOnce,
    };
    this.#scope.self = this.#scope;
    runInContext(readFileSync(script, 'utf8'), createContext(this.#scope));
  }

  /** Posts a message as a client does: what arrives is a copy, made in the worker's own world. */
  post(message: unknown): void {
    this.#scope.incoming = JSON.stringify(message);
    this.#scope.onmessage?.({ data: runInContext('JSON.parse(incoming)', this.#scope) });
  }

  postLexicon(): void {
    this.#scope.bytes = readFileSync(lexicon);
    const data = runInContext('({ battledoreLexicon: new Uint8Array(bytes).buffer })', this.#scope);
    this.#scope.onmessage?.({ data });
  }

  /** Answers a request with the bytes of a file, as structured clone does it. */
  postBytes(id: number | undefined, file: string): void {
    this.#scope.bytes = readFileSync(file);
    this.#scope.id = id;
    const data = runInContext("({ jsonrpc: '2.0', id, result: new Uint8Array(bytes) })", this.#scope);
    this.#scope.onmessage?.({ data });
  }

  async until(wanted: (message: Message) => boolean): Promise<Message> {
    for (;;) {
      const found = this.sent.find(wanted);
      if (found !== undefined) return found;
      await new Promise<void>((resolve) => {
        this.#wake = resolve;
      });
    }
  }
}

test('the built worker needs nothing of Node, waits for its words, and reviews what the client reads for it', async () => {
  const worker = new WorkerWorld();
  const folder = 'vscode-test-web://mount/lane';
  const initialize = {
    processId: null,
    rootUri: null,
    workspaceFolders: [{ uri: folder, name: 'lane' }],
    capabilities: {
      textDocument: {
        codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: ['quickfix'] } } },
      },
    },
    initializationOptions: { readsFiles: true },
  };
  worker.post({ jsonrpc: '2.0', id: 1, method: 'initialize', params: initialize });
  expect(worker.sent).toEqual([]);
  worker.postLexicon();
  await worker.until(({ id, result }) => id === 1 && result !== undefined);
  const textDocument = {
    uri: `${folder}/a.md`,
    languageId: 'markdown',
    version: 1,
    text: storyAt('2', 'The night map sat.'),
  };
  worker.post({ jsonrpc: '2.0', method: 'textDocument/didOpen', params: { textDocument } });
  const asked = await worker.until(({ method }) => method === 'battledore/readFile');
  expect(asked.params).toEqual({ uri: `${folder}/sequence.yaml` });
  worker.post({ jsonrpc: '2.0', id: asked.id, result: smallSequence });
  const published = await worker.until(({ method }) => method === 'textDocument/publishDiagnostics');
  expect(published.params).toMatchObject({ diagnostics: [{ code: 'untaught-spelling' }] });

  const position = { line: 3, character: 5 };
  const question = {
    textDocument: { uri: `${folder}/a.md` },
    range: { start: position, end: position },
    context: { diagnostics: [] },
  };
  worker.post({ jsonrpc: '2.0', id: 2, method: 'textDocument/codeAction', params: question });
  const wanted = await worker.until(({ method }) => method === 'battledore/readMeanings');
  worker.postBytes(wanted.id, meanings);
  const fixes = await worker.until(({ id, result }) => id === 2 && result !== undefined);
  expect(JSON.stringify(fixes.result)).toContain('Declare “night” a story word');
}, 20_000);

test('the built worker finds in every sample what the server on Node finds', async () => {
  const names = readdirSync(samples).filter((name) => /^\d.*\.md$/.test(name));
  expect(names.length).toBeGreaterThan(10);
  const sequence = readFileSync(`${samples}/sequence.yaml`, 'utf8');
  const desk = await sitDown({ phonics: packagePhonics, files: { '/lane/sequence.yaml': sequence } });
  const worker = new WorkerWorld();
  worker.postLexicon();
  worker.post({
    jsonrpc: '2.0',
    id: 1,
    method: 'initialize',
    params: {
      processId: null,
      rootUri: null,
      workspaceFolders: [{ uri: 'file:///lane', name: 'lane' }],
      capabilities: {
        textDocument: { publishDiagnostics: {} },
        // Told of changed files, the server reads the sequence once.
        workspace: { didChangeWatchedFiles: { dynamicRegistration: true } },
      },
      initializationOptions: { readsFiles: true },
    },
  });
  await worker.until(({ id, result }) => id === 1 && result !== undefined);
  for (const [index, name] of names.entries()) {
    const text = readFileSync(`${samples}/${name}`, 'utf8');
    const uri = `file:///lane/${name}`;
    const textDocument = { uri, languageId: 'markdown', version: 1, text };
    worker.post({ jsonrpc: '2.0', method: 'textDocument/didOpen', params: { textDocument } });
    if (index === 0) {
      const asked = await worker.until(({ method }) => method === 'battledore/readFile');
      worker.post({ jsonrpc: '2.0', id: asked.id, result: sequence });
    }
    await desk.open(`/lane/${name}`, text);
    const published = await worker.until(
      ({ method, params }) =>
        method === 'textDocument/publishDiagnostics' && (params as { readonly uri: string }).uri === uri,
    );
    const { diagnostics } = published.params as { readonly diagnostics: readonly unknown[] };
    expect(diagnostics, name).toEqual(JSON.parse(JSON.stringify(await desk.diagnostics(`/lane/${name}`))));
  }
}, 30_000);
