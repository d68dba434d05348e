import {
  type CodeAction,
  type CodeActionContext,
  CodeActionKind,
  type Command,
  type Diagnostic,
  type TextEdit as ProtocolEdit,
  type Range,
  type TextDocumentEdit,
  type WorkspaceEdit,
} from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { edited, type TextEdit } from '../fixes/text-edit.ts';
import type { Phonics } from '../phonics/phonics.ts';
import type { Finding } from '../review/review.ts';
import type { Thesaurus } from '../words/thesaurus.ts';
import { type Analysis, findingsOf } from './analysis.ts';
import { rangeOf } from './diagnostics.ts';
import type { Snapshot } from './documents.ts';
import type { Fix } from './fixes/fix.ts';
import { fixesFor } from './fixes/fixes-for.ts';
import { unreviewedFixesFor } from './fixes/front-matter-fixes.ts';

/** What the answer to a request for code actions rests on beside the analysis. */
export interface CodeActionWorld {
  readonly phonics: Phonics;
  /** Absent when it could not be had: then no replacements are offered. */
  readonly thesaurus: Thesaurus | undefined;
  /** True when the client takes edits with the version of their document. */
  readonly takesVersions: boolean;
  /** True when the client can move the caret once an edit is made. */
  readonly goesToPlaces: boolean;
  /** True for the latest snapshot of an open document. */
  readonly isOpen: (snapshot: Snapshot) => boolean;
}

/** A selection over many marked words is asked about the first of them only. */
const mostFindings = 3;

/**
 * The quick fixes for what is marked in a range, by the analysis alone: what the client believes is marked there, which
 * may be older, only says which of its diagnostics each fix is for. Edits carry the version of their document.
 */
export function codeActionsFor(
  analysis: Analysis,
  range: Range,
  { only, diagnostics }: CodeActionContext,
  world: CodeActionWorld,
): CodeAction[] {
  const { content, snapshot } = analysis;
  if (content.kind === 'sequence' || !wantsQuickFixes(only)) return [];
  const { document } = snapshot;
  const start = document.offsetAt(range.start);
  const end = document.offsetAt(range.end);
  const actions = new Map<string, CodeAction>();
  let fixed = 0;
  for (const finding of findingsOf(content)) {
    if (finding.span.start > end || finding.span.end < start) continue;
    const fixes =
      content.kind === 'reviewed' ? fixesFor(finding, content, world) : unreviewedFixesFor(finding, content);
    if (fixes.length > 0 && ++fixed > mostFindings) break;
    const marked = diagnostics.filter((diagnostic) => isFor(diagnostic, finding, snapshot));
    for (const fix of fixes) {
      const action = actionOf(fix, analysis, world);
      // One word can be marked by two rules; its fixes are offered once.
      const known = actions.get(action.title);
      actions.set(action.title, {
        ...(known ?? action),
        ...(marked.length > 0 ? { diagnostics: [...(known?.diagnostics ?? []), ...marked] } : {}),
      });
    }
  }
  return [...actions.values()];
}

/** A client may ask for some kinds only; `quickfix` stands for itself and all below it. */
function wantsQuickFixes(only: readonly string[] | undefined): boolean {
  return only === undefined || only.some((kind) => kind === '' || kind === CodeActionKind.QuickFix);
}

function isFor({ code, range }: Diagnostic, { rule, span }: Finding, snapshot: Snapshot): boolean {
  const own = rangeOf(snapshot, span);
  return (
    code === rule &&
    range.start.line === own.start.line &&
    range.start.character === own.start.character &&
    range.end.line === own.end.line &&
    range.end.character === own.end.character
  );
}

function actionOf(fix: Fix, { snapshot, content }: Analysis, world: CodeActionWorld): CodeAction {
  const inSequence = fix.file === 'sequence' && content.kind === 'reviewed';
  const changed = inSequence ? content.sequenceFile.snapshot : snapshot;
  return {
    title: fix.title,
    kind: CodeActionKind.QuickFix,
    edit: workspaceEdit(changed, fix.edits, world),
    ...(fix.isSure ? { isPreferred: true } : {}),
    ...(world.goesToPlaces ? followUp(fix, changed, inSequence) : {}),
  };
}

/**
 * What the client does once the edits are made: it takes the writer to where she goes on, or tells her of a change in a file
 * that she does not see.
 */
function followUp(
  { title, edits, caret }: Fix,
  { uri, document }: Snapshot,
  isElsewhere: boolean,
): { readonly command?: Command } {
  const at = isElsewhere ? edits[0]?.span.start : caret;
  if (at === undefined) return {};
  const changed = edited(document.getText(), edits);
  const place = TextDocument.create(uri, document.languageId, 0, changed).positionAt(at);
  const command = isElsewhere ? 'battledore.changedElsewhere' : 'battledore.goTo';
  return { command: { title, command, arguments: [uri, place] } };
}

function workspaceEdit(
  snapshot: Snapshot,
  edits: readonly TextEdit[],
  { takesVersions, isOpen }: CodeActionWorld,
): WorkspaceEdit {
  const written = edits.map(
    ({ span, text }): ProtocolEdit => ({ range: rangeOf(snapshot, span), newText: text }),
  );
  if (!takesVersions) return { changes: { [snapshot.uri]: written } };
  const version = isOpen(snapshot) ? snapshot.document.version : null;
  const change: TextDocumentEdit = { textDocument: { uri: snapshot.uri, version }, edits: written };
  return { documentChanges: [change] };
}
