import { type ChildProcess, spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import {
  createMessageConnection,
  type MessageConnection,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-jsonrpc/node';

/** A place of a document, lines and characters from 0. */
export interface BenchRange {
  readonly start: { readonly line: number; readonly character: number };
  readonly end: { readonly line: number; readonly character: number };
}

/** A diagnostic as far as it matters here. */
export interface BenchDiagnostic {
  readonly range: BenchRange;
  readonly code?: string;
}

/** A client of a language server's process, as plain as can be: diagnostics are pushed to it. */
export class LanguageClient {
  readonly #process: ChildProcess;
  readonly #connection: MessageConnection;
  readonly #waiting = new Map<string, (count: number) => void>();
  /** What was last said of any document. */
  latest: readonly BenchDiagnostic[] = [];

  constructor(server: string) {
    this.#process = spawn(process.execPath, [server, '--stdio'], { stdio: ['pipe', 'pipe', 'inherit'] });
    const { stdin, stdout } = this.#process;
    if (!stdin || !stdout) throw new Error('The server has no standard streams.');
    this.#connection = createMessageConnection(
      new StreamMessageReader(stdout),
      new StreamMessageWriter(stdin),
    );
    this.#connection.onNotification(
      'textDocument/publishDiagnostics',
      (params: { uri: string; version?: number; diagnostics: BenchDiagnostic[] }) => {
        this.latest = params.diagnostics;
        const key = `${params.uri} ${params.version ?? ''}`;
        this.#waiting.get(key)?.(params.diagnostics.length);
        this.#waiting.delete(key);
      },
    );
    this.#connection.onRequest('workspace/configuration', (params: { items: unknown[] }) =>
      params.items.map(() => null),
    );
    this.#connection.onRequest('client/registerCapability', () => null);
    this.#connection.listen();
  }

  async initialize(folder: string): Promise<void> {
    await this.#connection.sendRequest('initialize', {
      processId: process.pid,
      rootUri: folder,
      workspaceFolders: [{ uri: folder, name: 'bench' }],
      capabilities: {
        textDocument: {
          publishDiagnostics: { versionSupport: true },
          codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: ['quickfix'] } } },
        },
        workspace: {
          workspaceFolders: true,
          workspaceEdit: { documentChanges: true },
          didChangeWatchedFiles: { dynamicRegistration: true },
        },
      },
    });
    await this.#connection.sendNotification('initialized', {});
  }

  /** Opens a document and waits for its diagnostics; gives their number. */
  async open(uri: string, text: string): Promise<number> {
    const answer = this.#diagnostics(uri, 1);
    await this.#connection.sendNotification('textDocument/didOpen', {
      textDocument: { uri, languageId: 'markdown', version: 1, text },
    });
    return answer;
  }

  /** Replaces one range and waits for the diagnostics of that version. */
  async change(
    uri: string,
    version: number,
    line: number,
    character: number,
    length: number,
    text: string,
  ): Promise<number> {
    const answer = this.#diagnostics(uri, version);
    await this.#connection.sendNotification('textDocument/didChange', {
      textDocument: { uri, version },
      contentChanges: [
        { range: { start: { line, character }, end: { line, character: character + length } }, text },
      ],
    });
    return answer;
  }

  /** Closes a document. */
  async close(uri: string): Promise<void> {
    await this.#connection.sendNotification('textDocument/didClose', { textDocument: { uri } });
  }

  /** Asks for the quick fixes of a diagnostic; gives their number. */
  async fixes(uri: string, { range, code }: BenchDiagnostic): Promise<number> {
    const actions: unknown = await this.#connection.sendRequest('textDocument/codeAction', {
      textDocument: { uri },
      range,
      context: { diagnostics: [{ range, code, message: '' }] },
    });
    return Array.isArray(actions) ? actions.length : 0;
  }

  /** Asks for completion at a place; gives the number of words. */
  async completions(uri: string, line: number, character: number): Promise<number> {
    const list: { readonly items: readonly unknown[] } | null = await this.#connection.sendRequest(
      'textDocument/completion',
      { textDocument: { uri }, position: { line, character } },
    );
    return list?.items.length ?? 0;
  }

  /** The memory of the server's process now, in megabytes (resident set). Linux only; NaN elsewhere. */
  memory(): number {
    try {
      const line = /VmRSS:\s+(\d+) kB/.exec(readFileSync(`/proc/${this.#process.pid}/status`, 'utf8'));
      return Number(line?.[1]) / 1024;
    } catch {
      return Number.NaN;
    }
  }

  /** The processor time that the server's process has taken so far, in milliseconds. Linux only; NaN elsewhere. */
  processorTime(): number {
    try {
      const fields = readFileSync(`/proc/${this.#process.pid}/stat`, 'utf8')
        .replace(/^.*\) /, '')
        .split(' ');
      // User and system time in ticks, of which Linux has a hundred a second.
      return (Number(fields[11]) + Number(fields[12])) * 10;
    } catch {
      return Number.NaN;
    }
  }

  async stop(): Promise<void> {
    await this.#connection.sendRequest('shutdown');
    await this.#connection.sendNotification('exit');
    this.#connection.dispose();
    this.#process.kill();
  }

  #diagnostics(uri: string, version: number): Promise<number> {
    return new Promise((resolve) => {
      this.#waiting.set(`${uri} ${version}`, resolve);
    });
  }
}
