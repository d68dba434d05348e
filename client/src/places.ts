import {
  type DecorationOptions,
  Range,
  Selection,
  type TextEditor,
  TextEditorRevealType,
  ThemeColor,
  type Uri,
  ViewColumn,
  window,
  workspace,
} from 'vscode';
import type { ProtocolRange } from '../../server/src/editor/protocol.ts';

/** How a place is shown. */
export interface RevealOptions {
  /** True selects the place; false puts the caret at its start, so that a key pressed by mistake keeps the text. */
  readonly select: boolean;
  /** True moves the focus into the text. */
  readonly focus: boolean;
}

/** Shows a place of a file, in the editor that has it open where there is one. */
export async function revealPlace(
  uri: Uri,
  range: ProtocolRange | undefined,
  { select, focus }: RevealOptions,
): Promise<void> {
  const document = await workspace.openTextDocument(uri);
  const shown = window.visibleTextEditors.find((editor) => editor.document === document);
  const editor = await window.showTextDocument(document, {
    viewColumn: shown?.viewColumn ?? ViewColumn.Active,
    preserveFocus: !focus,
    preview: true,
  });
  if (range === undefined) return;
  const { start, end } = range;
  // The text may have grown shorter since the server looked at it.
  const place = document.validateRange(new Range(start.line, start.character, end.line, end.character));
  editor.selection = select ? new Selection(place.start, place.end) : new Selection(place.start, place.start);
  editor.revealRange(place, TextEditorRevealType.InCenterIfOutsideViewport);
  tint(editor, place);
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
