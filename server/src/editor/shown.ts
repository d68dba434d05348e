import type { Diagnostic } from 'vscode-languageserver';
import type { Finding, PlacedReview, Review, RuleId } from '../review/review.ts';
import type { Span } from '../text/span.ts';
import type { Analysis } from './analysis.ts';
import { diagnosticOf } from './diagnostics.ts';
import type { Snapshot } from './documents.ts';
import type { PageDiagnostics } from './page-diagnostics.ts';
import { wordAt } from './word-at.ts';

/** What is shown at a document, and whether something is held back. */
export interface Shown {
  /** Different whenever the diagnostics may be. */
  readonly resultId: string;
  /** True when a finding is left out because its word is being typed. */
  readonly holdsBack: boolean;
  /** In the order of the text, but for the findings of the story as a whole, which come first. Made on demand. */
  diagnostics(): Diagnostic[];
}

/**
 * What to show of an analysis. `typingAt` is where the writer is typing a word, absent when she is not: what is found
 * about the word that ends there is held back.
 */
export function shownOf(analysis: Analysis, typingAt: number | undefined, pages: PageDiagnostics): Shown {
  const { content, snapshot } = analysis;
  if (content.kind !== 'reviewed') {
    return {
      resultId: `${analysis.id}`,
      holdsBack: false,
      diagnostics: () => content.findings.map((finding) => diagnosticOf(snapshot, finding)),
    };
  }
  const { review } = content;
  const word = typingAt === undefined ? undefined : wordBeingTyped(review, snapshot, typingAt);
  const isHeld = ({ rule, span }: Finding, by = 0): boolean =>
    word !== undefined && wordRules.has(rule) && word.start <= span.start + by && span.end + by <= word.end;
  const isOnPage = ({ placed, reviewed }: PlacedReview): boolean =>
    word !== undefined &&
    placed.start <= word.start &&
    word.end <= placed.start + placed.page.source.length &&
    reviewed.findings.some((finding) => isHeld(finding, placed.start));
  const heldPage = word === undefined ? undefined : review.pages.find(isOnPage);
  const holdsBack = heldPage !== undefined || review.ownFindings.some((finding) => isHeld(finding));
  const ofPage = (page: PlacedReview): readonly Diagnostic[] => {
    const all = pages.of(page, snapshot);
    return page === heldPage
      ? all.filter((_, index) => {
          const finding = page.reviewed.findings[index];
          return finding === undefined || !isHeld(finding, page.placed.start);
        })
      : all;
  };
  return {
    resultId: holdsBack ? `${analysis.id}-${typingAt}` : `${analysis.id}`,
    holdsBack,
    diagnostics: () => {
      const all = review.ownFindings
        .filter((finding) => !isHeld(finding))
        .map((finding) => diagnosticOf(snapshot, finding));
      for (const page of review.pages) {
        for (const diagnostic of ofPage(page)) all.push(diagnostic);
      }
      return all;
    },
  };
}

const wordRules: ReadonlySet<RuleId> = new Set<RuleId>([
  'untaught-spelling',
  'untaught-form',
  'guessed-reading',
]);

function wordBeingTyped(review: Review, { document }: Snapshot, caret: number): Span | undefined {
  const before = document.getText().charAt(caret - 1);
  // After `don'` the word so far ends before the apostrophe and is not finished either.
  const end = /['\u2019\u02bc]/.test(before) ? caret - 1 : caret;
  const word = wordAt(review, end);
  return word?.span.end === end ? word.span : undefined;
}
