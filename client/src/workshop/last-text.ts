import {
  Disposable,
  EventEmitter,
  Selection,
  type TextDocument,
  type TextEditor,
  window,
  workspace,
} from 'vscode';
import { storyFirst } from '../common-messages.ts';
import { noteInsertion, wordInsertion } from './insertion.ts';

/** The text the writer was at last, of any kind, as long as it is open. */
export class LastText implements Disposable {
  readonly #changed = new EventEmitter<void>();
  readonly #subscriptions: Disposable;
  #document: TextDocument | undefined;

  /** Fires when the text is another or has changed. */
  readonly onDidChange = this.#changed.event;

  constructor() {
    this.#subscriptions = Disposable.from(
      window.onDidChangeActiveTextEditor((editor) => this.#follow(editor?.document)),
      workspace.onDidChangeTextDocument(({ document }) => {
        if (document === this.#document || document.fileName.endsWith('sequence.yaml')) this.#changed.fire();
      }),
      workspace.onDidCloseTextDocument((document) => {
        if (document !== this.#document) return;
        this.#document = undefined;
        this.#changed.fire();
      }),
    );
    this.#follow(window.activeTextEditor?.document);
  }

  /** The document, if there is one. */
  get document(): TextDocument | undefined {
    return this.#document;
  }

  /** Writes a word at the caret. */
  async insertWord(word: string): Promise<void> {
    const editor = await this.#editor();
    if (editor === undefined) return;
    const { document, selection } = editor;
    const before = document.lineAt(selection.start.line).text.slice(0, selection.start.character);
    const after = document.lineAt(selection.end.line).text.slice(selection.end.character);
    await editor.edit((edit) => edit.replace(selection, wordInsertion(before, word, after)));
    editor.selection = new Selection(editor.selection.end, editor.selection.end);
  }

  /** Writes a note for the teacher below the caret's line. */
  async insertNote(text: string): Promise<void> {
    const editor = await this.#editor();
    if (editor === undefined) return;
    const { document, selection } = editor;
    const line = document.lineAt(selection.end.line);
    const next =
      line.lineNumber + 1 < document.lineCount ? document.lineAt(line.lineNumber + 1).text : undefined;
    await editor.edit((edit) => edit.insert(line.range.end, noteInsertion(line.text, text, next)));
  }

  /** Lets go of the editor. */
  dispose(): void {
    this.#subscriptions.dispose();
    this.#changed.dispose();
  }

  #follow(document: TextDocument | undefined): void {
    if (document === undefined || document.uri.scheme === 'output' || document === this.#document) return;
    this.#document = document;
    this.#changed.fire();
  }

  async #editor(): Promise<TextEditor | undefined> {
    const document = this.#document;
    if (document?.languageId !== 'markdown') {
      void window.showInformationMessage(storyFirst());
      return undefined;
    }
    const shown = window.visibleTextEditors.find((editor) => editor.document === document);
    return shown ?? (await window.showTextDocument(document, { preserveFocus: true }));
  }
}
