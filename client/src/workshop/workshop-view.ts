import {
  commands,
  Disposable,
  l10n,
  type Uri,
  type WebviewView,
  type WebviewViewProvider,
  window,
} from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import {
  chainRequest,
  fitRequest,
  type NoAnswer,
  wordsRequest,
} from '../../../server/src/editor/workshop/protocol.ts';
import { checkingStopped } from '../common-messages.ts';
import { webviewFolder, webviewFrame } from '../webview-frame.ts';
import type { LastText } from './last-text.ts';
import type { WorkshopKind, WorkshopMessage, WorkshopShow } from './messages.ts';

const requests = { words: wordsRequest, chain: chainRequest, fit: fitRequest } as const;

const titles = (): Readonly<Record<WorkshopKind, string>> => ({
  words: l10n.t('Words'),
  chain: l10n.t('Chain'),
  fit: l10n.t('Fit'),
});

/** Changes of the text are told after a pause of this length, in milliseconds. */
const pause = 600;

/** One of the views beside the gauge: the word finder, the chain, the fit. */
export class WorkshopViewProvider implements WebviewViewProvider, Disposable {
  readonly #kind: WorkshopKind;
  readonly #extensionUri: Uri;
  readonly #client: BaseLanguageClient;
  readonly #text: LastText;
  readonly #subscriptions: Disposable;
  #view: WebviewView | undefined;
  #timer: ReturnType<typeof setTimeout> | undefined;

  /** @param text what the view is about; not disposed here. */
  constructor(kind: WorkshopKind, extensionUri: Uri, client: BaseLanguageClient, text: LastText) {
    this.#kind = kind;
    this.#extensionUri = extensionUri;
    this.#client = client;
    this.#text = text;
    this.#subscriptions = Disposable.from(
      window.registerWebviewViewProvider(`battledore.${kind}`, this),
      text.onDidChange(() => this.#tellLater()),
    );
  }

  /** Called by the editor when the view is first opened. */
  resolveWebviewView(view: WebviewView): void {
    this.#view = view;
    view.webview.options = { enableScripts: true, localResourceRoots: [webviewFolder(this.#extensionUri)] };
    view.webview.onDidReceiveMessage((message: WorkshopMessage) => this.#receive(message));
    view.onDidChangeVisibility(() => this.#tell());
    view.onDidDispose(() => {
      this.#view = undefined;
    });
    view.webview.html = webviewFrame(view.webview, this.#extensionUri, {
      title: titles()[this.#kind],
      script: 'workshop.js',
      style: 'workshop.css',
      kind: this.#kind,
    });
  }

  /** Takes the view's provider away. */
  dispose(): void {
    clearTimeout(this.#timer);
    this.#subscriptions.dispose();
  }

  #tellLater(): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.#tell(), pause);
  }

  #tell(): void {
    const path = this.#text.document?.uri.path ?? '';
    this.#post({ type: 'text', name: path.slice(path.lastIndexOf('/') + 1) });
  }

  #post(message: WorkshopShow): void {
    if (this.#view?.visible) void this.#view.webview.postMessage(message);
  }

  async #receive(message: WorkshopMessage): Promise<void> {
    switch (message.type) {
      case 'ready':
        return this.#tell();
      case 'ask':
        return this.#post({ type: 'answer', id: message.id, answer: await this.#ask(message.wish) });
      case 'insert-word':
        return this.#text.insertWord(message.word);
      case 'insert-note':
        return this.#text.insertNote(message.text);
      case 'editor':
        await commands.executeCommand('workbench.action.focusActiveEditorGroup');
    }
  }

  async #ask(wish: Readonly<Record<string, unknown>>): Promise<unknown> {
    const { document } = this.#text;
    if (document === undefined) return { message: l10n.t('Open a text first.') } satisfies NoAnswer;
    if (this.#kind === 'fit' && wish.text === undefined && document.languageId === 'yaml')
      return { message: l10n.t('Open a text first, or paste one.') } satisfies NoAnswer;
    const text = this.#kind === 'fit' && wish.text === undefined ? { text: document.getText() } : {};
    try {
      return await this.#client.sendRequest(requests[this.#kind], {
        ...wish,
        ...text,
        uri: document.uri.toString(),
      });
    } catch {
      return {
        message: checkingStopped(),
      } satisfies NoAnswer;
    }
  }
}
