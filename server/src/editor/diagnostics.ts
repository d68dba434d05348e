import { type Diagnostic, DiagnosticSeverity } from 'vscode-languageserver';
import type { Finding } from '../review/review.ts';
import type { Span } from '../text/span.ts';
import type { Snapshot } from './documents.ts';
import type { ProtocolRange } from './protocol.ts';

/** The name that stands beside each diagnostic. */
export const diagnosticSource = 'battledore';

/** The span as the protocol has it. */
export function rangeOf({ document }: Snapshot, { start, end }: Span): ProtocolRange {
  return { start: document.positionAt(start), end: document.positionAt(end) };
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
