import {
  commands,
  Disposable,
  l10n,
  Range,
  Uri,
  ViewColumn,
  type WebviewPanel,
  window,
  workspace,
} from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import {
  type NoAnswer,
  type PreviewAnswer,
  type PreviewParams,
  previewRequest,
} from '../../../server/src/editor/workshop/protocol.ts';
import { fontFiles, fontNames } from '../../../server/src/materials/layout/font-files.ts';
import { checkingStopped } from '../common-messages.ts';
import { fileName } from '../file-name.ts';
import { webviewFolder, webviewFrame } from '../webview-frame.ts';
import type { LastText } from '../workshop/last-text.ts';
import { LatestRun } from './latest-run.ts';
import { allParts, type PreviewMessage, type PreviewShow, type PrintChoice } from './messages.ts';

/** While somebody types, the pages are drawn again this often, in milliseconds. */
const pause = 250;

/** The pages of the story at hand as they would be printed, beside the text. There is at most one. */
export class PreviewPanel implements Disposable {
  readonly #client: BaseLanguageClient;
  readonly #extensionUri: Uri;
  readonly #text: LastText;
  readonly #print: (story: Uri, choice: PrintChoice) => Promise<void>;
  readonly #subscriptions: Disposable;
  readonly #latest = new LatestRun(() => this.#show(), pause);
  #panel: WebviewPanel | undefined;
  #whileOpen: Disposable | undefined;
  #choice: PrintChoice = { material: 'book', layout: 'page', paper: 'letter' };
  /** Keys of the pictures that the page has. */
  #known: readonly string[] = [];
  #shown: Uri | undefined;
  /** How often the page has begun anew. */
  #loads = 0;

  /** @param text which story is shown; not disposed here. @param print prints what is shown. */
  constructor(
    client: BaseLanguageClient,
    extensionUri: Uri,
    text: LastText,
    print: (story: Uri, choice: PrintChoice) => Promise<void>,
  ) {
    this.#client = client;
    this.#extensionUri = extensionUri;
    this.#text = text;
    this.#print = print;
    this.#subscriptions = Disposable.from(
      commands.registerCommand('battledore.previewPrint', () => this.#open()),
      text.onDidChange(() => {
        if (this.#panel?.visible) this.#latest.ask();
      }),
    );
  }

  /** Closes the panel and takes the command away. */
  dispose(): void {
    this.#latest.dispose();
    this.#panel?.dispose();
    this.#subscriptions.dispose();
  }

  #open(): void {
    if (this.#panel !== undefined) {
      this.#panel.reveal(undefined, true);
      return;
    }
    const panel = window.createWebviewPanel(
      'battledore.preview',
      l10n.t('Printed Pages'),
      { viewColumn: ViewColumn.Beside, preserveFocus: true },
      { enableScripts: true, localResourceRoots: [webviewFolder(this.#extensionUri)] },
    );
    this.#panel = panel;
    // Pictures come from files that no text change tells of.
    const watcher = workspace.createFileSystemWatcher('**/*.{png,jpg,jpeg,svg,PNG,JPG,JPEG,SVG}');
    const again = () => this.#latest.ask();
    this.#whileOpen = Disposable.from(
      watcher,
      watcher.onDidChange(again),
      watcher.onDidCreate(again),
      watcher.onDidDelete(again),
    );
    panel.webview.onDidReceiveMessage((message: PreviewMessage) => this.#receive(message));
    panel.onDidDispose(() => {
      this.#whileOpen?.dispose();
      this.#panel = undefined;
      this.#loads++;
    });
    panel.webview.html = webviewFrame(panel.webview, this.#extensionUri, {
      title: l10n.t('Printed pages'),
      script: 'preview.js',
      style: 'preview.css',
      showsPictures: true,
    });
  }

  async #receive(message: PreviewMessage): Promise<void> {
    switch (message.type) {
      case 'ready':
        // A page that was hidden begins anew, without fonts and pictures.
        this.#known = [];
        this.#loads++;
        this.#choice = message.choice ?? this.#choice;
        await this.#sendFonts();
        return this.#latest.askNow();
      case 'choose':
        this.#choice = message.choice;
        return this.#latest.askNow();
      case 'print':
        return this.#shown === undefined ? undefined : this.#print(this.#shown, this.#choice);
      case 'reveal':
        return this.#showText(message.line);
      case 'editor':
        return this.#showText();
    }
  }

  /** Goes to the story, and to a line of it, counted from 1. */
  async #showText(line?: number): Promise<void> {
    const story = this.#shown;
    if (story === undefined) return;
    const open = window.visibleTextEditors.find(
      ({ document }) => document.uri.toString() === story.toString(),
    );
    const selection = line === undefined ? {} : { selection: new Range(line - 1, 0, line - 1, 0) };
    await window.showTextDocument(story, { viewColumn: open?.viewColumn ?? ViewColumn.One, ...selection });
  }

  async #sendFonts(): Promise<void> {
    const names = Object.keys(fontFiles) as (keyof typeof fontFiles)[];
    const fonts = await Promise.all(
      names.map(async (name) => {
        const file = Uri.joinPath(this.#extensionUri, 'server', 'dist', fontFiles[name]);
        // On Node a Buffer may come, which a message would not carry as bytes.
        return [fontNames[name], new Uint8Array(await workspace.fs.readFile(file))] as const;
      }),
    );
    this.#post({ type: 'fonts', fonts: Object.fromEntries(fonts) });
  }

  async #show(): Promise<void> {
    const { document } = this.#text;
    const choice = this.#choice;
    const loads = this.#loads;
    if (this.#panel === undefined) return;
    if (document === undefined) {
      this.#shown = undefined;
      return this.#post({
        type: 'nothing',
        choice,
        message: l10n.t('Open a story to see its printed pages.'),
        keepsPages: false,
      });
    }
    const { uri } = document;
    const params: PreviewParams = { ...choice, uri: uri.toString(), parts: allParts, known: this.#known };
    let answer: PreviewAnswer | NoAnswer;
    try {
      answer = await this.#client.sendRequest<PreviewAnswer | NoAnswer>(previewRequest, params);
    } catch {
      answer = { message: checkingStopped() };
    }
    // The page may have been closed or begun anew in the meantime; then it has asked again.
    if (loads !== this.#loads) return;
    if ('message' in answer) {
      const keepsPages = this.#shown?.toString() === params.uri;
      if (!keepsPages) this.#shown = undefined;
      return this.#post({ type: 'nothing', choice, message: answer.message, keepsPages });
    }
    this.#shown = uri;
    const name = fileName(uri);
    this.#known = answer.pictures.map(({ key }) => key);
    this.#post({ type: 'pages', name, choice, answer });
  }

  #post(message: PreviewShow): void {
    void this.#panel?.webview.postMessage(message);
  }
}
