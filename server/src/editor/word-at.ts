import type { Review, ReviewedWord } from '../review/review.ts';
import { type Span, shifted } from '../text/span.ts';

/** A word of the child's text at its place in the file. */
export interface WordAt {
  readonly reviewed: ReviewedWord;
  /** Absolute. */
  readonly span: Span;
}

/** The word of the running text or the title around an offset, both its ends included; of two that meet there the later. */
export function wordAt({ pages, title }: Review, offset: number): WordAt | undefined {
  let found: WordAt | undefined;
  const look = (words: readonly ReviewedWord[], start: number): void => {
    for (const reviewed of words) {
      const span = shifted(reviewed.word.span, start);
      if (span.start <= offset && offset <= span.end) found = { reviewed, span };
    }
  };
  look(title, 0);
  for (const { placed, reviewed } of pages) {
    const isAround = placed.start <= offset && offset <= placed.start + placed.page.source.length;
    if (isAround) look(reviewed.words, placed.start);
  }
  return found;
}
