import * as vscode from 'vscode';
import { keyHeader } from '../agreement.ts';
import type { FolderChange } from '../changes.ts';
import type { EntryFacts } from '../folder.ts';

const changeTypes: Readonly<Record<FolderChange['type'], vscode.FileChangeType>> = {
  created: vscode.FileChangeType.Created,
  changed: vscode.FileChangeType.Changed,
  deleted: vscode.FileChangeType.Deleted,
};

/**
 * The opened folder, read and written over HTTP through the host of `npm start`. The first name in the path of an
 * address is the folder itself.
 */
export class FolderFileSystem implements vscode.FileSystemProvider, vscode.Disposable {
  readonly #server: string;
  readonly #key: string;
  readonly #changes = new vscode.EventEmitter<vscode.FileChangeEvent[]>();
  readonly #listening = new AbortController();
  /** The scheme and folder name of the first address seen: changes on the disk are told in these terms. */
  #home: vscode.Uri | undefined;

  readonly onDidChangeFile = this.#changes.event;

  constructor(server: string, key: string) {
    this.#server = server;
    this.#key = key;
  }

  dispose(): void {
    this.#listening.abort();
    this.#changes.dispose();
  }

  watch(uri: vscode.Uri): vscode.Disposable {
    if (this.#home === undefined) {
      this.#home = uri.with({ path: `/${uri.path.split('/')[1] ?? ''}` });
      void this.#listen(this.#home);
    }
    return new vscode.Disposable(() => {});
  }

  async stat(uri: vscode.Uri): Promise<vscode.FileStat> {
    const facts: EntryFacts = await (await this.#ask('GET', uri, { action: 'facts' })).json();
    return { type: typeOf(facts.kind), ctime: facts.created, mtime: facts.modified, size: facts.size };
  }

  async readDirectory(uri: vscode.Uri): Promise<[string, vscode.FileType][]> {
    const entries: { name: string; kind: EntryFacts['kind'] }[] = await (
      await this.#ask('GET', uri, { action: 'list' })
    ).json();
    return entries.map((entry) => [entry.name, typeOf(entry.kind)]);
  }

  async readFile(uri: vscode.Uri): Promise<Uint8Array> {
    return new Uint8Array(await (await this.#ask('GET', uri, { action: 'read' })).arrayBuffer());
  }

  async writeFile(
    uri: vscode.Uri,
    content: Uint8Array,
    options: { create: boolean; overwrite: boolean },
  ): Promise<void> {
    const query = { action: 'write', create: `${options.create}`, overwrite: `${options.overwrite}` };
    await this.#ask('POST', uri, query, content);
    this.#tell([{ type: vscode.FileChangeType.Changed, uri }]);
  }

  async createDirectory(uri: vscode.Uri): Promise<void> {
    await this.#ask('POST', uri, { action: 'make-folder' });
    this.#tell([{ type: vscode.FileChangeType.Created, uri }]);
  }

  async delete(uri: vscode.Uri): Promise<void> {
    await this.#ask('POST', uri, { action: 'delete' });
    this.#tell([{ type: vscode.FileChangeType.Deleted, uri }]);
  }

  async rename(from: vscode.Uri, to: vscode.Uri, options: { overwrite: boolean }): Promise<void> {
    await this.#ask('POST', from, {
      action: 'rename',
      to: pathInFolder(to),
      overwrite: `${options.overwrite}`,
    });
    this.#tell([
      { type: vscode.FileChangeType.Deleted, uri: from },
      { type: vscode.FileChangeType.Created, uri: to },
    ]);
  }

  async #ask(
    method: 'GET' | 'POST',
    uri: vscode.Uri,
    query: Readonly<Record<string, string>>,
    body?: Uint8Array,
  ): Promise<Response> {
    const words = new URLSearchParams({ path: pathInFolder(uri), ...query });
    const response = await fetch(`${this.#server}?${words}`, {
      method,
      headers: { [keyHeader]: this.#key },
      body: body === undefined ? null : new Uint8Array(body),
    }).catch(() => {
      throw vscode.FileSystemError.Unavailable('The program behind this page has ended. Start it again.');
    });
    if (response.ok) return response;
    const reason = await response.text();
    if (response.status === 404) throw vscode.FileSystemError.FileNotFound(uri);
    if (response.status === 409) throw vscode.FileSystemError.FileExists(uri);
    if (response.status === 403) throw vscode.FileSystemError.NoPermissions(reason);
    throw vscode.FileSystemError.Unavailable(reason);
  }

  #tell(changes: vscode.FileChangeEvent[]): void {
    this.#changes.fire(changes);
  }

  /** Listens to changes on the disk, and again after a pause when the host was gone for a while. */
  async #listen(home: vscode.Uri): Promise<void> {
    const pause = 2000;
    const signal = this.#listening.signal;
    while (!signal.aborted) {
      try {
        const response = await fetch(`${this.#server}/changes`, {
          headers: { [keyHeader]: this.#key },
          signal,
        });
        if (!response.ok || response.body === null) return;
        await this.#tellLines(home, response.body);
      } catch {
        // The host has ended or the page is closing; both show elsewhere.
      }
      await new Promise((resolve) => setTimeout(resolve, pause));
    }
  }

  async #tellLines(home: vscode.Uri, body: ReadableStream<Uint8Array>): Promise<void> {
    const decoder = new TextDecoder();
    const reader = body.getReader();
    let waiting = '';
    for (let part = await reader.read(); !part.done; part = await reader.read()) {
      const lines = (waiting + decoder.decode(part.value, { stream: true })).split('\n');
      waiting = lines.pop() ?? '';
      for (const line of lines) {
        const changes: FolderChange[] = JSON.parse(line);
        if (changes.length === 0) continue;
        this.#tell(
          changes.map(({ path, type }) => ({
            type: changeTypes[type],
            uri: vscode.Uri.joinPath(home, ...path.split('/')),
          })),
        );
      }
    }
  }
}

function pathInFolder(uri: vscode.Uri): string {
  return uri.path.split('/').slice(2).join('/');
}

function typeOf(kind: EntryFacts['kind']): vscode.FileType {
  return kind === 'folder' ? vscode.FileType.Directory : vscode.FileType.File;
}
