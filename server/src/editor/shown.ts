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
  const held = word === undefined ? undefined : heldOnPage(word, review);
  const isHeld = (finding: Finding): boolean => word !== undefined && isAbout(word, finding);
  const holdsBack = held !== undefined || review.ownFindings.some(isHeld);
  return {
    resultId: holdsBack ? `${analysis.id}-${typingAt}` : `${analysis.id}`,
    holdsBack,
    diagnostics: () => {
      const all = review.ownFindings
        .filter((finding) => !isHeld(finding))
        .map((finding) => diagnosticOf(snapshot, finding));
      for (const page of review.pages) {
        for (const [index, diagnostic] of pages.of(page, snapshot).entries()) {
          if (page !== held?.page || !held.places.has(index)) all.push(diagnostic);
        }
      }
      return all;
    },
  };
}

/** The findings of a page that are held back, by their place among its findings. */
interface HeldOnPage {
  readonly page: PlacedReview;
  readonly places: ReadonlySet<number>;
}

function heldOnPage(word: Span, { pages }: Review): HeldOnPage | undefined {
  for (const page of pages) {
    const { placed, reviewed } = page;
    if (word.start < placed.start || word.end > placed.start + placed.page.source.length) continue;
    const places = reviewed.findings.flatMap((finding, index) =>
      isAbout(word, finding, placed.start) ? [index] : [],
    );
    if (places.length > 0) return { page, places: new Set(places) };
  }
  return undefined;
}

/** True for what is found about a word; the finding's span counts from `start`. */
function isAbout(word: Span, { rule, span }: Finding, start = 0): boolean {
  return wordRules.has(rule) && word.start <= span.start + start && span.end + start <= word.end;
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
