import { PassThrough } from 'node:stream';
import { createConnection } from 'vscode-languageserver/node';
import {
  type ClientCapabilities,
  type CodeAction,
  type CodeActionContext,
  type CompletionItem,
  type CompletionList,
  createProtocolConnection,
  type Diagnostic,
  type DocumentDiagnosticReport,
  type DocumentSymbol,
  type Hover,
  type InitializeResult,
  type LocationLink,
  type ProtocolConnection,
  type PublishDiagnosticsParams,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver-protocol/node';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { Timers } from '../../server/src/editor/host.ts';
import {
  type GaugeParams,
  gaugeNotification,
  type Settings,
  type StoriesParams,
  storiesNotification,
} from '../../server/src/editor/protocol.ts';
import { type RunningServer, startServer } from '../../server/src/editor/server.ts';
import {
  type ReadPicturesParams,
  type ReadPicturesResult,
  readPicturesRequest,
} from '../../server/src/editor/workshop/protocol.ts';
import { createPreviewer } from '../../server/src/materials/preview/previewer.ts';
import { print } from '../../server/src/materials/print.ts';
import type { Phonics } from '../../server/src/phonics/phonics.ts';
import { seriesReport } from '../../server/src/series/report/series-report.ts';
import type { Thesaurus } from '../../server/src/words/thesaurus.ts';
import { beginnersWords, handPhonics } from './hand-phonics.ts';
import { packageFonts } from './package-fonts.ts';

/** What a test may say about the client and its world. */
export interface DeskSettings {
  /** Whether the client asks for diagnostics or has them sent. */
  readonly client?: 'pull' | 'push';
  /** Files on disk, by path from the root: `/lane/sequence.yaml`. */
  readonly files?: Readonly<Record<string, string>>;
  /** Workspace folders, by path. */
  readonly folders?: readonly string[];
  readonly settings?: Partial<Settings>;
  readonly phonics?: Phonics;
  /** Words by meaning; none unless given. */
  readonly thesaurus?: () => Promise<Thesaurus>;
  /** True for a server that can print. */
  readonly prints?: boolean;
  /** The client's answer when it is asked for pictures; none is there unless given. */
  readonly pictures?: (params: ReadPicturesParams) => ReadPicturesResult;
  /** True for a server that can list files, and so keeps an index of all stories. */
  readonly listsFiles?: boolean;
  /** False for a client that takes no versions in edits. */
  readonly takesVersions?: boolean;
  /** True for a client with a command that moves the caret. */
  readonly goesToPlaces?: boolean;
  /** Leave `initialize` to the test. */
  readonly asleep?: boolean;
}

/** A writer's editor with a server behind it, both in this process, on a clock that the test moves. */
export type Desk = Awaited<ReturnType<typeof sitDown>>;

/** Starts client and server and waits until both have said all they have to say. */
export async function sitDown(given: DeskSettings = {}) {
  const {
    client = 'push',
    folders = ['/lane'],
    settings = {},
    phonics = handPhonics(beginnersWords),
  } = given;
  const files = new Map(Object.entries(given.files ?? {}));
  const reads: string[] = [];
  const clock = createClock();
  const up = new PassThrough();
  const down = new PassThrough();
  const serverEnd = createConnection(new StreamMessageReader(up), new StreamMessageWriter(down));
  const server: RunningServer = startServer(serverEnd, {
    phonics,
    timers: clock,
    ...(given.thesaurus === undefined ? {} : { thesaurus: given.thesaurus }),
    ...(given.prints === true
      ? {
          printing: async () => ({
            print,
            report: seriesReport,
            fonts: packageFonts,
            createPreviewer: () => createPreviewer(packageFonts),
          }),
        }
      : {}),
    ...(given.listsFiles === true
      ? {
          listFiles: async (folder: string) =>
            [...files.keys()].filter((path) => path.startsWith(`${pathOf(folder)}/`)).map(uriOf),
        }
      : {}),
    readFile: async (uri) => {
      reads.push(pathOf(uri));
      return files.get(pathOf(uri)) ?? null;
    },
  });
  const connection = createProtocolConnection(new StreamMessageReader(down), new StreamMessageWriter(up));
  const texts = new Map<string, TextDocument>();
  const published: PublishDiagnosticsParams[] = [];
  const gauges: GaugeParams[] = [];
  const stories: StoriesParams[] = [];
  const log: string[] = [];
  let refreshes = 0;
  let current: Partial<Settings> = settings;
  connection.onNotification('textDocument/publishDiagnostics', (params: PublishDiagnosticsParams) => {
    published.push(params);
  });
  connection.onNotification(gaugeNotification, (params: GaugeParams) => {
    gauges.push(params);
  });
  connection.onNotification(storiesNotification, (params: StoriesParams) => {
    stories.push(params);
  });
  connection.onNotification('window/logMessage', ({ message }: { message: string }) => {
    log.push(message);
  });
  connection.onRequest('workspace/configuration', () => [current]);
  connection.onRequest('client/registerCapability', () => null);
  connection.onRequest(
    readPicturesRequest,
    (params: ReadPicturesParams): ReadPicturesResult =>
      given.pictures?.(params) ?? params.addresses.map(() => ({ trouble: 'is not there or cannot be read' })),
  );
  connection.onRequest('workspace/diagnostic/refresh', () => {
    refreshes++;
    return null;
  });
  connection.listen();

  const desk = {
    connection,
    server,
    clock,
    files,
    reads,
    published,
    gauges,
    stories,
    log,
    get refreshes() {
      return refreshes;
    },
    initialize: (): Promise<InitializeResult> =>
      connection.sendRequest('initialize', {
        processId: null,
        rootUri: null,
        workspaceFolders: folders.map((path) => ({ uri: uriOf(path), name: path })),
        capabilities: capabilitiesOf(client, given.takesVersions ?? true),
        initializationOptions: { goesToPlaces: given.goesToPlaces === true },
      }),
    initialized: async () => {
      await connection.sendNotification('initialized', {});
      await settled();
    },
    open: async (path: string, text: string, languageId = languageOf(path)) => {
      texts.set(path, TextDocument.create(uriOf(path), languageId, 1, text));
      const textDocument = { uri: uriOf(path), languageId, version: 1, text };
      await connection.sendNotification('textDocument/didOpen', { textDocument });
      await settled();
    },
    /** Replaces what stands between two offsets; does not wait for the server. */
    replace: (path: string, start: number, end: number, replacement: string): void => {
      const document = textOf(texts, path);
      const range = { start: document.positionAt(start), end: document.positionAt(end) };
      const contentChanges = [{ range, text: replacement }];
      const version = document.version + 1;
      texts.set(path, TextDocument.update(document, contentChanges, version));
      const textDocument = { uri: uriOf(path), version };
      void connection.sendNotification('textDocument/didChange', { textDocument, contentChanges });
    },
    /** Replaces the first place where `found` stands; does not wait for the server. */
    send: (path: string, found: string, replacement: string): void => {
      const start = textOf(texts, path).getText().indexOf(found);
      if (start === -1) throw new Error(`“${found}” does not stand in ${path}.`);
      desk.replace(path, start, start + found.length, replacement);
    },
    /** The same, and waits until the server has said all it has to say. */
    edit: async (path: string, found: string, replacement: string) => {
      desk.send(path, found, replacement);
      await settled();
    },
    /** Types sign by sign behind the first place where `found` stands. */
    type: async (path: string, found: string, typed: string) => {
      let before = found;
      for (const sign of typed) {
        await desk.edit(path, before, before + sign);
        before += sign;
      }
    },
    close: async (path: string) => {
      texts.delete(path);
      await connection.sendNotification('textDocument/didClose', { textDocument: { uri: uriOf(path) } });
      await settled();
    },
    /** A file changes on disk (null: vanishes), and the client tells. */
    changeFile: async (path: string, text: string | null) => {
      if (text === null) files.delete(path);
      else files.set(path, text);
      const changes = [{ uri: uriOf(path), type: text === null ? 3 : 2 }];
      await connection.sendNotification('workspace/didChangeWatchedFiles', { changes });
      await settled();
    },
    changeSettings: async (changed: Partial<Settings>) => {
      current = changed;
      await connection.sendNotification('workspace/didChangeConfiguration', { settings: null });
      await settled();
    },
    pull: (path: string, previousResultId?: string): Promise<DocumentDiagnosticReport> =>
      connection.sendRequest('textDocument/diagnostic', {
        textDocument: { uri: uriOf(path) },
        ...(previousResultId === undefined ? {} : { previousResultId }),
      }),
    diagnostics: async (path: string): Promise<readonly Diagnostic[]> => {
      if (client === 'push') {
        return published.filter(({ uri }) => uri === uriOf(path)).at(-1)?.diagnostics ?? [];
      }
      const report = await desk.pull(path);
      return report.kind === 'full' ? report.items : [];
    },
    /** What is marked, in the order of the text: each as `rule: the marked text`. */
    marks: async (path: string): Promise<readonly string[]> => {
      const document = textOf(texts, path);
      return (await desk.diagnostics(path)).map(({ code, range }) => `${code}: ${document.getText(range)}`);
    },
    messages: async (path: string): Promise<readonly string[]> =>
      (await desk.diagnostics(path)).map(({ message }) =>
        typeof message === 'string' ? message : message.value,
      ),
    hover: (path: string, on: string): Promise<Hover | null> =>
      connection.sendRequest('textDocument/hover', placeOf(texts, path, on)),
    /** The markdown of a hover; empty when there is none. */
    hoverText: async (path: string, on: string): Promise<string> => {
      const hover = await desk.hover(path, on);
      const contents = hover?.contents;
      return contents !== undefined && typeof contents === 'object' && 'value' in contents
        ? contents.value
        : '';
    },
    /** The quick fixes at a place, found by its text. */
    fixes: async (
      path: string,
      on: string,
      context: Partial<CodeActionContext> = {},
    ): Promise<readonly CodeAction[]> => {
      const { textDocument, position } = placeOf(texts, path, on);
      return connection.sendRequest('textDocument/codeAction', {
        textDocument,
        range: { start: position, end: position },
        context: { diagnostics: [], ...context },
      });
    },
    /** A document or file after a fix; what stands in no edit is as it was. */
    after: (path: string, { edit }: CodeAction): string => {
      const before = texts.get(path) ?? TextDocument.create(uriOf(path), 'yaml', 0, files.get(path) ?? '');
      const changes = (edit?.documentChanges ?? []).flatMap((change) =>
        'textDocument' in change && change.textDocument.uri === uriOf(path) ? change.edits : [],
      );
      const plain = [...changes, ...(edit?.changes?.[uriOf(path)] ?? [])].filter((each) => 'newText' in each);
      return TextDocument.applyEdits(before, plain);
    },
    /** What completion offers behind some text. */
    completions: async (path: string, behind: string): Promise<readonly CompletionItem[]> => {
      const list: CompletionList | null = await connection.sendRequest(
        'textDocument/completion',
        placeOf(texts, path, behind, behind.length),
      );
      return list?.items ?? [];
    },
    outline: (path: string): Promise<DocumentSymbol[]> =>
      connection.sendRequest('textDocument/documentSymbol', { textDocument: { uri: uriOf(path) } }),
    definition: (path: string, on: string): Promise<LocationLink[]> =>
      connection.sendRequest('textDocument/definition', placeOf(texts, path, on)),
    lastGauge: (path: string): GaugeParams | undefined =>
      gauges.filter(({ uri }) => uri === uriOf(path)).at(-1),
    /** The text of an open document, as the client has it. */
    textOf: (path: string): string | undefined => texts.get(path)?.getText(),
    versionOf: (path: string): number => textOf(texts, path).version,
  };
  if (given.asleep !== true) {
    await desk.initialize();
    await desk.initialized();
  }
  return desk;
}

/** The address of a path. */
export function uriOf(path: string): string {
  return `file://${path}`;
}

/** Waits until nothing that is on its way between client and server is left. */
export async function settled(): Promise<void> {
  for (let turn = 0; turn < 60; turn++) await new Promise((resolve) => setImmediate(resolve));
}

/** A clock that moves only by `pass`; turns of the event loop are real. */
function createClock() {
  let now = 0;
  const planned = new Set<{ readonly due: number; readonly task: () => void }>();
  const timers: Timers = {
    soon: (task) => {
      setImmediate(task);
    },
    after: (milliseconds, task) => {
      const entry = { due: now + milliseconds, task };
      planned.add(entry);
      return () => planned.delete(entry);
    },
  };
  return {
    ...timers,
    /** Lets time pass, in milliseconds, and waits until the server is done with what was due. */
    pass: async (milliseconds: number) => {
      now += milliseconds;
      for (const entry of [...planned].sort((one, other) => one.due - other.due)) {
        if (entry.due <= now && planned.delete(entry)) entry.task();
      }
      await settled();
    },
  };
}

function capabilitiesOf(client: 'pull' | 'push', takesVersions: boolean): ClientCapabilities {
  return {
    workspace: {
      configuration: true,
      workspaceFolders: true,
      workspaceEdit: { documentChanges: takesVersions },
      didChangeConfiguration: { dynamicRegistration: true },
      didChangeWatchedFiles: { dynamicRegistration: true },
      ...(client === 'pull' ? { diagnostics: { refreshSupport: true } } : {}),
    },
    textDocument: {
      hover: { contentFormat: ['markdown', 'plaintext'] },
      definition: { linkSupport: true },
      codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: ['quickfix'] } } },
      documentSymbol: { hierarchicalDocumentSymbolSupport: true },
      ...(client === 'pull' ? { diagnostic: {} } : { publishDiagnostics: {} }),
    },
  };
}

function placeOf(texts: ReadonlyMap<string, TextDocument>, path: string, on: string, further = 0) {
  const document = textOf(texts, path);
  const at = document.getText().indexOf(on);
  if (at === -1) throw new Error(`“${on}” does not stand in ${path}.`);
  return { textDocument: { uri: uriOf(path) }, position: document.positionAt(at + further) };
}

function textOf(texts: ReadonlyMap<string, TextDocument>, path: string): TextDocument {
  const document = texts.get(path);
  if (document === undefined) throw new Error(`${path} is not open.`);
  return document;
}

function languageOf(path: string): string {
  return path.endsWith('.md') ? 'markdown' : 'yaml';
}

function pathOf(uri: string): string {
  return decodeURIComponent(uri.replace('file://', ''));
}

/** Ends the connection; what is still open in the test is forgotten. */
export function standUp({ connection }: { readonly connection: ProtocolConnection }): void {
  connection.dispose();
}
