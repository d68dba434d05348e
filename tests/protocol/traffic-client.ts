import { type ChildProcess, spawn } from 'node:child_process';
import {
  CancellationTokenSource,
  createMessageConnection,
  type MessageConnection,
  ResponseError,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-jsonrpc/node';
import type { GaugeParams } from '../../server/src/editor/protocol.ts';

/** Diagnostics as they came, by push or pull. */
export type Diagnostics = readonly unknown[];

/** The end of the address of documents that are sent as nonsense: no book is kept of them. */
export const nonsenseName = 'nonsense.md';

/** How a process ended. */
export interface End {
  readonly code: number | null;
  readonly signal: string | null;
}

/** What a request came to: an answer or an error's code. Waiting longer than `patience` is a fault of the server. */
export type Answer = { readonly result: unknown } | { readonly error: number };

/** Milliseconds a request may take, on a busy machine too. */
const patience = 60_000;

/**
 * A client of a server's process that keeps book: which versions of which documents it has sent, which of them the server
 * must know by now, and what the server said of which. What the server does wrong is in `faults`.
 *
 * The server must know a version once it has answered anything that was asked after it: what it sends behind that answer
 * must not be of an earlier one.
 */
export class TrafficClient {
  readonly faults: string[] = [];
  /** What the server wrote to the client's log: each is a fault that it caught. */
  readonly log: string[] = [];
  readonly ended: Promise<End>;
  /** The request that took longest so far. */
  slowest: { readonly method: string; readonly milliseconds: number } = { method: 'none', milliseconds: 0 };
  readonly #process: ChildProcess;
  readonly #connection: MessageConnection;
  readonly #pulls: boolean;
  #errors = '';
  #isOver = false;
  /** Each sending of a text has a number; by address, the number of the latest sending and those of all versions. */
  #sendings = 0;
  readonly #latest = new Map<string, number>();
  readonly #versions = new Map<string, Map<number, number>>();
  readonly #known = new Map<string, number>();
  readonly #published = new Map<string, Diagnostics>();
  readonly #gauges = new Map<string, GaugeParams>();

  /** @param settings what the client answers when it is asked for its settings. */
  constructor(server: string, given: { readonly pulls: boolean; readonly settings: () => unknown }) {
    this.#pulls = given.pulls;
    this.#process = spawn(process.execPath, [server, '--stdio'], { stdio: ['pipe', 'pipe', 'pipe'] });
    const { stdin, stdout, stderr } = this.#process;
    if (!stdin || !stdout || !stderr) throw new Error('The server has no standard streams.');
    stderr.setEncoding('utf8').on('data', (part: string) => {
      this.#errors += part;
    });
    // Writing to a server that has ended is noted where its end is.
    stdin.on('error', () => {});
    this.ended = new Promise((resolve) => {
      this.#process.once('exit', (code, signal) => {
        if (!this.#isOver) this.faults.push(`The server ended (${code ?? signal}): ${this.#errors}`);
        resolve({ code, signal });
      });
    });
    this.#connection = createMessageConnection(
      new StreamMessageReader(stdout),
      new StreamMessageWriter(stdin),
    );
    this.#connection.onNotification('textDocument/publishDiagnostics', (params: Published) =>
      this.#receive(params),
    );
    this.#connection.onNotification('battledore/gauge', (params: GaugeParams) => {
      this.#check('a gauge', params.uri, params.version);
      this.#gauges.set(params.uri, params);
    });
    this.#connection.onNotification('window/logMessage', ({ message }: { message: string }) => {
      this.log.push(message);
    });
    this.#connection.onRequest('workspace/configuration', () => [given.settings()]);
    this.#connection.onRequest('client/registerCapability', () => null);
    this.#connection.onRequest('workspace/diagnostic/refresh', () => null);
    this.#connection.onError(([error]) => this.faults.push(`The line broke: ${error.message}`));
    this.#connection.listen();
  }

  /** The process's number. */
  get pid(): number {
    return this.#process.pid ?? -1;
  }

  /** Starts a session on some folders. */
  async initialize(folders: readonly string[]): Promise<void> {
    await this.request('initialize', {
      processId: process.pid,
      rootUri: null,
      workspaceFolders: folders.map((uri) => ({ uri, name: uri })),
      capabilities: {
        workspace: {
          configuration: true,
          workspaceFolders: true,
          workspaceEdit: { documentChanges: true },
          didChangeConfiguration: { dynamicRegistration: true },
          didChangeWatchedFiles: { dynamicRegistration: true },
          ...(this.#pulls ? { diagnostics: { refreshSupport: true } } : {}),
        },
        textDocument: {
          hover: { contentFormat: ['markdown'] },
          definition: { linkSupport: true },
          codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: ['quickfix'] } } },
          documentSymbol: { hierarchicalDocumentSymbolSupport: true },
          ...(this.#pulls ? { diagnostic: {} } : { publishDiagnostics: { versionSupport: true } }),
        },
      },
    });
    this.notify('initialized', {});
  }

  /** Notes that a text of a document is being sent under a version. */
  sending(uri: string, version: number): void {
    this.#sendings++;
    this.#latest.set(uri, this.#sendings);
    const versions = this.#versions.get(uri) ?? new Map<number, number>();
    versions.set(version, this.#sendings);
    this.#versions.set(uri, versions);
  }

  /** Notes that a document is being closed. */
  closing(uri: string): void {
    this.#sendings++;
    this.#latest.set(uri, this.#sendings);
  }

  notify(method: string, params: unknown): void {
    // On a line that is closed sending throws at once.
    try {
      void this.#connection.sendNotification(method, params).catch(() => {});
    } catch {}
  }

  /** Asks; `cancelAfter` milliseconds later, if given, the question is taken back. */
  async request(method: string, params: unknown, cancelAfter?: number): Promise<Answer> {
    const start = performance.now();
    const sent = new Map(this.#latest);
    const cancel = new CancellationTokenSource();
    const timer = cancelAfter === undefined ? undefined : setTimeout(() => cancel.cancel(), cancelAfter);
    let patienceTimer: NodeJS.Timeout | undefined;
    const tooLong = new Promise<'too long'>((resolve) => {
      patienceTimer = setTimeout(() => resolve('too long'), patience);
    });
    const ended = this.ended.then(() => 'ended' as const);
    try {
      const answer = await Promise.race([
        // On a line that is closed sending throws at once.
        (async () => this.#connection.sendRequest(method, params, cancel.token))().then(
          (result): Answer => ({ result }),
          (fault: unknown): Answer => ({ error: fault instanceof ResponseError ? fault.code : Number.NaN }),
        ),
        tooLong,
        ended,
      ]);
      if (answer === 'ended') return { error: Number.NaN };
      if (answer === 'too long') {
        this.faults.push(`${method} was not answered in ${patience / 1000} s.`);
        return { error: Number.NaN };
      }
      const took = performance.now() - start;
      if (took > this.slowest.milliseconds) this.slowest = { method, milliseconds: took };
      for (const [uri, sending] of sent) this.#known.set(uri, Math.max(sending, this.#known.get(uri) ?? 0));
      return answer;
    } finally {
      clearTimeout(timer);
      clearTimeout(patienceTimer);
    }
  }

  /** What the server says of a document: asked for, or the last that it has sent. */
  async diagnostics(uri: string): Promise<Diagnostics> {
    if (!this.#pulls) {
      await this.request('textDocument/documentSymbol', { textDocument: { uri } });
      return this.#published.get(uri) ?? [];
    }
    const answer = await this.request('textDocument/diagnostic', { textDocument: { uri } });
    const report = 'result' in answer ? (answer.result as { items?: Diagnostics }) : {};
    return report.items ?? [];
  }

  /** The latest gauge of a document. */
  gauge(uri: string): GaugeParams | undefined {
    return this.#gauges.get(uri);
  }

  /** From here on the server may end. */
  over(): void {
    this.#isOver = true;
  }

  /** Closes the server's input, as an editor that dies does. */
  hangUp(): void {
    this.#process.stdin?.end();
  }

  /** Ends the process whatever it does. */
  kill(): void {
    this.over();
    this.#connection.dispose();
    this.#process.kill('SIGKILL');
  }

  #receive({ uri, version, diagnostics }: Published): void {
    if (version === undefined) {
      // What is taken away when a document is closed has no version, nor have problems of stories that are not open.
      this.#published.set(uri, diagnostics);
      return;
    }
    this.#check('diagnostics', uri, version);
    this.#published.set(uri, diagnostics);
  }

  #check(what: string, uri: string, version: number): void {
    if (uri.endsWith(nonsenseName)) return;
    const sending = this.#versions.get(uri)?.get(version);
    if (sending === undefined) {
      this.faults.push(`The server sent ${what} of version ${version} of ${uri}, which it was never given.`);
    } else if (sending < (this.#known.get(uri) ?? 0)) {
      this.faults.push(`The server sent ${what} of version ${version} of ${uri} when it knew a later one.`);
    }
  }
}

interface Published {
  readonly uri: string;
  readonly version?: number;
  readonly diagnostics: Diagnostics;
}

/** Waits some milliseconds. */
export function pause(milliseconds: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, milliseconds));
}
