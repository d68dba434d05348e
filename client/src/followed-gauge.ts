import { Disposable, EventEmitter, type TextDocument, type Uri, window, workspace } from 'vscode';
import type { GaugeState } from './gauge/messages.ts';
import type { GaugeStore } from './gauge-store.ts';

/**
 * The gauge of the story the writer is at: the markdown file in the active editor, or else the last one, as long as it
 * is open. So the gauge stays in sight, and moves, while the sequence is being edited.
 */
export class FollowedGauge implements Disposable {
  readonly #gauges: GaugeStore;
  readonly #changed = new EventEmitter<void>();
  readonly #subscriptions: Disposable;
  #uri: Uri | undefined;

  /** Fires when `state` may have changed. */
  readonly onDidChange = this.#changed.event;

  /** @param gauges where the gauges come from; not disposed here. */
  constructor(gauges: GaugeStore) {
    this.#gauges = gauges;
    this.#subscriptions = Disposable.from(
      gauges.onDidChange(() => this.#changed.fire()),
      window.onDidChangeActiveTextEditor((editor) => this.#follow(editor?.document)),
      workspace.onDidCloseTextDocument((document) => this.#leave(document)),
    );
    this.#follow(window.activeTextEditor?.document);
  }

  /** What there is to show now. */
  get state(): GaugeState {
    return this.#uri === undefined ? { kind: 'no-file' } : this.#gauges.stateOf(this.#uri);
  }

  /** Lets go of the editor. */
  dispose(): void {
    this.#subscriptions.dispose();
    this.#changed.dispose();
  }

  #follow(document: TextDocument | undefined): void {
    if (document?.languageId !== 'markdown' || document.uri.toString() === this.#uri?.toString()) return;
    this.#uri = document.uri;
    this.#changed.fire();
  }

  #leave(document: TextDocument): void {
    if (document.uri.toString() !== this.#uri?.toString()) return;
    this.#uri = undefined;
    this.#follow(window.activeTextEditor?.document);
    this.#changed.fire();
  }
}
