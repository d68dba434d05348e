import { commands, Disposable, l10n, Uri, type WebviewView, type WebviewViewProvider, window } from 'vscode';
import type { FollowedGauge } from './followed-gauge.ts';
import type { ShowMessage, ViewMessage } from './gauge/messages.ts';
import { revealPlace } from './places.ts';
import { webviewFolder, webviewFrame } from './webview-frame.ts';

/** The gauge view in the side bar. */
export class GaugeViewProvider implements WebviewViewProvider, Disposable {
  readonly #extensionUri: Uri;
  readonly #followed: FollowedGauge;
  readonly #subscriptions: Disposable;
  #view: WebviewView | undefined;

  /** @param followed what to show; not disposed here. */
  constructor(extensionUri: Uri, followed: FollowedGauge) {
    this.#extensionUri = extensionUri;
    this.#followed = followed;
    this.#subscriptions = Disposable.from(
      window.registerWebviewViewProvider('battledore.gauge', this),
      followed.onDidChange(() => this.#send()),
    );
  }

  /** Called by the editor when the view is first opened. */
  resolveWebviewView(view: WebviewView): void {
    this.#view = view;
    view.webview.options = { enableScripts: true, localResourceRoots: [webviewFolder(this.#extensionUri)] };
    view.webview.onDidReceiveMessage((message: ViewMessage) => this.#receive(message));
    view.onDidChangeVisibility(() => this.#send());
    view.onDidDispose(() => {
      this.#view = undefined;
    });
    view.webview.html = webviewFrame(view.webview, this.#extensionUri, {
      title: l10n.t('Gauge'),
      script: 'view.js',
      style: 'view.css',
    });
  }

  /** Takes the view's provider away. */
  dispose(): void {
    this.#subscriptions.dispose();
  }

  #send(): void {
    if (!this.#view?.visible) return;
    const message: ShowMessage = { type: 'show', state: this.#followed.state };
    void this.#view.webview.postMessage(message);
  }

  async #receive(message: ViewMessage): Promise<void> {
    switch (message.type) {
      case 'ready':
        return this.#send();
      case 'reveal':
        return this.#reveal(message);
      case 'sequence-problem':
        return this.#revealSequenceProblem();
      default:
        await runCommand(commandOf[message.type]);
    }
  }

  async #reveal({ uri, range, select }: ViewMessage & { type: 'reveal' }): Promise<void> {
    const { state } = this.#followed;
    // A click may cross with a change of story; then the place means nothing any more.
    if (state.kind !== 'gauge' || state.gauge.uri !== uri) return;
    await revealPlace(Uri.parse(uri, true), range, { select, focus: false });
  }

  async #revealSequenceProblem(): Promise<void> {
    const { state } = this.#followed;
    const problems =
      state.kind === 'gauge'
        ? state.gauge.sequenceProblems
        : state.kind === 'no-gauge'
          ? state.sequenceProblems
          : undefined;
    if (problems === undefined) return;
    await revealPlace(Uri.parse(problems.uri, true), problems.range, { select: true, focus: true });
  }
}

const commandOf = {
  editor: ['workbench.action.focusActiveEditorGroup'],
  lesson: ['battledore.openLesson'],
  problems: ['workbench.actions.view.problems'],
  settings: ['workbench.action.openSettings', 'battledore'],
  restart: ['battledore.restartServer'],
  'new-story': ['battledore.newStory'],
  'new-sequence': ['battledore.newSequence'],
  samples: ['battledore.openSamples'],
} as const satisfies Record<string, readonly [string, ...string[]]>;

async function runCommand([command, ...rest]: readonly [string, ...string[]]): Promise<void> {
  await commands.executeCommand(command, ...rest);
}
