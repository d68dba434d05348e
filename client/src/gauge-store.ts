import { type Disposable, EventEmitter, type Uri, workspace } from 'vscode';
import type { GaugeParams } from '../../server/src/editor/protocol.ts';
import type { GaugeState } from './gauge/messages.ts';

/** How the server does. */
export type ServerState = 'starting' | 'running' | 'stopped';

/** The latest gauge of every open document. What is closed is forgotten. */
export class GaugeStore implements Disposable {
  readonly #latest = new Map<string, GaugeParams>();
  readonly #changed = new EventEmitter<void>();
  readonly #closing = workspace.onDidCloseTextDocument((document) => this.#forget(document.uri));
  #server: ServerState = 'starting';

  /** Fires after each change of what `stateOf` would answer. */
  readonly onDidChange = this.#changed.event;

  /** Takes in what the server sent; anything older than what is known, or of a closed document, is dropped. */
  accept(params: GaugeParams): void {
    const known = this.#latest.get(params.uri);
    if (known !== undefined && known.version > params.version) return;
    if (!workspace.textDocuments.some(({ uri }) => uri.toString() === params.uri)) return;
    this.#latest.set(params.uri, params);
    this.#changed.fire();
  }

  /** Notes how the server does. While it starts anew, what was known stays on show: it comes back the same. */
  serverIs(state: ServerState): void {
    if (this.#server === state) return;
    this.#server = state;
    this.#changed.fire();
  }

  /** How the server does. */
  get server(): ServerState {
    return this.#server;
  }

  /** What there is to show of a document. */
  stateOf(uri: Uri): GaugeState {
    if (this.#server === 'stopped') return { kind: 'stopped' };
    const params = this.#latest.get(uri.toString());
    if (params === undefined) return { kind: 'starting' };
    if ('gauge' in params) return { kind: 'gauge', gauge: params.gauge };
    const { reason, message, sequenceProblems } = params;
    return { kind: 'no-gauge', reason, message, ...(sequenceProblems && { sequenceProblems }) };
  }

  /** Lets go of the editor. */
  dispose(): void {
    this.#closing.dispose();
    this.#changed.dispose();
  }

  #forget(uri: Uri): void {
    if (this.#latest.delete(uri.toString())) this.#changed.fire();
  }
}
