import {
  commands,
  type DecorationOptions,
  Range,
  Selection,
  type TextDocumentShowOptions,
  type TextEditor,
  TextEditorRevealType,
  ThemeColor,
  type Uri,
  ViewColumn,
  window,
} from 'vscode';
import type { ProtocolRange } from '../../server/src/editor/protocol.ts';

/** How a place is shown. */
export interface RevealOptions {
  /** True selects the place; false puts the caret at its start, so that a key pressed by mistake keeps the text. */
  readonly select: boolean;
  /** True moves the focus into the text. */
  readonly focus: boolean;
  /** Where the file is opened if no editor shows it; the active column when absent. */
  readonly column?: ViewColumn;
}

/** Shows a place of a file, in the editor that has it open where there is one. */
export async function revealPlace(
  uri: Uri,
  range: ProtocolRange | undefined,
  { select, focus, column }: RevealOptions,
): Promise<void> {
  const shown = visibleEditorOf(uri);
  const viewColumn = shown?.viewColumn ?? column ?? ViewColumn.Active;
  const options: TextDocumentShowOptions = { viewColumn, preserveFocus: !focus, preview: true };
  if (shown !== undefined) await window.showTextDocument(shown.document, options);
  // `openTextDocument` would keep the file open for minutes after its tab is closed, without anyone seeing its problems.
  else await commands.executeCommand('vscode.open', uri, options);
  const editor = visibleEditorOf(uri);
  if (range === undefined || editor === undefined) return;
  const { start, end } = range;
  // The text may have grown shorter since the server looked at it.
  const place = editor.document.validateRange(
    new Range(start.line, start.character, end.line, end.character),
  );
  editor.selection = select ? new Selection(place.start, place.end) : new Selection(place.start, place.start);
  editor.revealRange(place, TextEditorRevealType.InCenterIfOutsideViewport);
  tint(editor, place);
}

function visibleEditorOf(uri: Uri): TextEditor | undefined {
  return window.visibleTextEditors.find(({ document }) => document.uri.toString() === uri.toString());
}

function tint(editor: TextEditor, place: Range): void {
  const decoration = window.createTextEditorDecorationType({
    backgroundColor: new ThemeColor('editor.rangeHighlightBackground'),
    // High contrast themes have borders in place of tints.
    borderColor: new ThemeColor('editor.rangeHighlightBorder'),
    isWholeLine: false,
  });
  const options: DecorationOptions[] = [{ range: place }];
  editor.setDecorations(decoration, options);
  setTimeout(() => decoration.dispose(), tintMilliseconds);
}

const tintMilliseconds = 1500;
