import { commands, Disposable, l10n, Uri, ViewColumn, type WebviewPanel, window } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import {
  type SeriesAnswer,
  type SeriesParams,
  type SeriesPlace,
  type SeriesPlaceParams,
  type SeriesPlaceResult,
  seriesChangedNotification,
  seriesPlaceRequest,
  seriesRequest,
} from '../../../server/src/editor/series/protocol.ts';
import { checkingStopped } from '../common-messages.ts';
import { revealPlace } from '../places.ts';
import { webviewFolder, webviewFrame } from '../webview-frame.ts';
import type { SeriesMessage, SeriesShow } from './messages.ts';
import { saveReport } from './save-report.ts';

/** The view of a whole series, in the editor area: one panel, opened by *Show Series*. */
export class SeriesPanel implements Disposable {
  readonly #extensionUri: Uri;
  readonly #client: BaseLanguageClient;
  readonly #subscriptions: Disposable;
  #panel: WebviewPanel | undefined;
  /** The sequence the writer has chosen, or the file she came from. */
  #uri: string | undefined;
  /** Goes up with each question, so that a late answer is known for one. */
  #asked = 0;
  /** Where the writer writes; files of the series are opened there. */
  #column = ViewColumn.One;

  /** @param client asked for the series; not disposed here. */
  constructor(extensionUri: Uri, client: BaseLanguageClient) {
    this.#extensionUri = extensionUri;
    this.#client = client;
    this.#subscriptions = Disposable.from(
      commands.registerCommand('battledore.showSeries', () => this.#show()),
      commands.registerCommand('battledore.saveSeriesReport', () => this.#save()),
      client.onNotification(seriesChangedNotification, () => this.#send()),
      window.onDidChangeActiveTextEditor((editor) => {
        if (editor?.viewColumn !== undefined) this.#column = editor.viewColumn;
      }),
    );
  }

  /** Closes the panel and takes the commands away. */
  dispose(): void {
    this.#panel?.dispose();
    this.#subscriptions.dispose();
  }

  async #show(): Promise<void> {
    const editor = window.activeTextEditor;
    this.#uri = editor?.document.uri.toString() ?? this.#uri;
    if (editor?.viewColumn !== undefined) this.#column = editor.viewColumn;
    if (this.#panel !== undefined) {
      this.#panel.reveal();
      return this.#send();
    }
    // Beside a sequence, so that both are in sight while lessons are moved.
    const column = editor === undefined ? ViewColumn.Active : ViewColumn.Beside;
    const panel = window.createWebviewPanel('battledore.series', l10n.t('Series'), column, {
      enableScripts: true,
      localResourceRoots: [webviewFolder(this.#extensionUri)],
      retainContextWhenHidden: true,
    });
    this.#panel = panel;
    panel.webview.onDidReceiveMessage((message: SeriesMessage) => this.#receive(message));
    panel.onDidChangeViewState(() => this.#send());
    panel.onDidDispose(() => {
      this.#panel = undefined;
    });
    panel.webview.html = webviewFrame(panel.webview, this.#extensionUri, {
      title: l10n.t('Series'),
      script: 'series.js',
      style: 'series.css',
    });
  }

  async #save(): Promise<void> {
    await saveReport(this.#client, this.#uri ?? window.activeTextEditor?.document.uri.toString());
  }

  /** Asks for the series and shows it, while the panel is in sight. */
  async #send(): Promise<void> {
    if (!this.#panel?.visible) return;
    const asked = ++this.#asked;
    const message = await this.#ask();
    if (asked === this.#asked) void this.#panel?.webview.postMessage(message);
  }

  async #ask(): Promise<SeriesShow> {
    const params: SeriesParams = this.#uri === undefined ? {} : { uri: this.#uri };
    try {
      const answer = await this.#client.sendRequest<SeriesAnswer | null>(seriesRequest, params);
      return { type: 'series', answer, message: '' };
    } catch {
      const message = checkingStopped();
      return { type: 'series', answer: null, message };
    }
  }

  async #receive(message: SeriesMessage): Promise<void> {
    switch (message.type) {
      case 'ready':
        return this.#send();
      case 'choose':
        this.#uri = message.uri;
        return this.#send();
      case 'open':
        return this.#open(message.uri, message.place);
      case 'save':
        return this.#save();
      case 'editor':
        await commands.executeCommand('workbench.action.focusActiveEditorGroup');
    }
  }

  async #open(uri: string, place: SeriesPlace): Promise<void> {
    const params: SeriesPlaceParams = { uri, place };
    const range = await this.#client
      .sendRequest<SeriesPlaceResult>(seriesPlaceRequest, params)
      .catch(() => null);
    const select = place.kind === 'word' || place.kind === 'spelling';
    await revealPlace(Uri.parse(uri, true), range ?? undefined, {
      select,
      focus: true,
      column: this.#column,
    });
  }
}
