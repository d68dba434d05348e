import type { Diagnostic } from 'vscode-languageserver';
import type { PlacedReview, ReviewedPage } from '../review/review.ts';
import { shifted } from '../text/span.ts';
import { diagnosticOf } from './diagnostics.ts';
import type { Snapshot } from './documents.ts';

/** The diagnostics of pages, kept from version to version: an edit makes those of its own page anew, and of those it moves. */
export interface PageDiagnostics {
  /** One for each finding of the page, in their order. */
  of(page: PlacedReview, snapshot: Snapshot): readonly Diagnostic[];
}

/** Starts with nothing kept; what is kept of a page goes with its review. */
export function createPageDiagnostics(): PageDiagnostics {
  const kept = new WeakMap<ReviewedPage, { line: number; character: number; made: readonly Diagnostic[] }>();
  return {
    of: ({ placed: { start }, reviewed }, snapshot) => {
      if (reviewed.findings.length === 0) return [];
      const { line, character } = snapshot.document.positionAt(start);
      const before = kept.get(reviewed);
      if (before?.line === line && before.character === character) return before.made;
      const made = reviewed.findings.map((finding) =>
        diagnosticOf(snapshot, { ...finding, span: shifted(finding.span, start) }),
      );
      kept.set(reviewed, { line, character, made });
      return made;
    },
  };
}
