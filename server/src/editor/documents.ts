import { TextDocument, type TextDocumentContentChangeEvent } from 'vscode-languageserver-textdocument';

/**
 * One version of an open document. Never changed: an edit gives a new object, so that holding one is holding the
 * address, version and text of one moment.
 */
export interface Snapshot {
  /** As the client writes it. */
  readonly uri: string;
  readonly document: TextDocument;
  /** Just past the text of the last change, where the caret of a typist is; absent when that is not known. */
  readonly touched?: number;
}

/** A document that is not going to change: a sequence read from disk, or an opened one. */
export function snapshotOf(uri: string, languageId: string, version: number, text: string): Snapshot {
  return { uri, document: TextDocument.create(uri, languageId, version, text) };
}

/** The next version of a document, its edits applied in order. Ranges outside the text are moved to its ends. */
export function editedSnapshot(
  { uri, document }: Snapshot,
  changes: readonly TextDocumentContentChangeEvent[],
  version: number,
): Snapshot {
  const copy = TextDocument.create(document.uri, document.languageId, document.version, document.getText());
  const edited = TextDocument.update(copy, [...changes], version);
  const last = changes.at(-1);
  if (last === undefined || !('range' in last)) return { uri, document: edited };
  return { uri, document: edited, touched: edited.offsetAt(last.range.start) + last.text.length };
}
