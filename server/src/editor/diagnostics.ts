import { type Diagnostic, DiagnosticSeverity } from 'vscode-languageserver';
import type { Finding, RuleId } from '../review/review.ts';
import type { Span } from '../text/span.ts';
import type { Analysis } from './analysis.ts';
import type { Snapshot } from './documents.ts';
import type { ProtocolRange } from './protocol.ts';
import { wordAt } from './word-at.ts';

/** What is shown at a document, and whether something is held back. */
export interface Shown {
  /** Different whenever the diagnostics may be. */
  readonly resultId: string;
  /** True when a finding is left out because its word is being typed. */
  readonly holdsBack: boolean;
  /** Made on demand: whoever already has this result needs none. */
  diagnostics(): Diagnostic[];
}

/** The name that stands beside each diagnostic. */
export const diagnosticSource = 'battledore';

/** The span as the protocol has it. */
export function rangeOf({ document }: Snapshot, { start, end }: Span): ProtocolRange {
  return { start: document.positionAt(start), end: document.positionAt(end) };
}

/**
 * What to show of an analysis. `typingAt` is where the writer is typing a word, absent when she is not: what is found
 * about the word that ends there is held back.
 */
export function shownOf(analysis: Analysis, typingAt: number | undefined): Shown {
  const word = typingAt === undefined ? undefined : wordBeingTyped(analysis, typingAt);
  const isHeld = ({ rule, span }: Finding): boolean =>
    word !== undefined && wordRules.has(rule) && word.start <= span.start && span.end <= word.end;
  const holdsBack = analysis.findings.some(isHeld);
  return {
    resultId: holdsBack ? `${analysis.id}-${typingAt}` : `${analysis.id}`,
    holdsBack,
    diagnostics: () =>
      (holdsBack ? analysis.findings.filter((finding) => !isHeld(finding)) : analysis.findings).map(
        (finding) => diagnosticOf(analysis.snapshot, finding),
      ),
  };
}

const wordRules: ReadonlySet<RuleId> = new Set<RuleId>([
  'untaught-spelling',
  'untaught-form',
  'guessed-reading',
]);

function wordBeingTyped({ content, snapshot }: Analysis, caret: number): Span | undefined {
  if (content.kind !== 'reviewed') return undefined;
  const before = snapshot.document.getText().charAt(caret - 1);
  // After `don'` the word so far ends before the apostrophe and is not finished either.
  const end = /['\u2019\u02bc]/.test(before) ? caret - 1 : caret;
  const word = wordAt(content.review, end);
  return word?.span.end === end ? word.span : undefined;
}

/** A finding as the protocol has it. */
export function diagnosticOf(snapshot: Snapshot, { rule, severity, span, message }: Finding): Diagnostic {
  return {
    range: rangeOf(snapshot, span),
    severity: severities[severity],
    code: rule,
    source: diagnosticSource,
    message,
  };
}

const severities: Readonly<Record<Finding['severity'], DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  information: DiagnosticSeverity.Information,
};
