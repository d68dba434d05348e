import type { Span } from './span.ts';

/** Something wrong with a file itself, at the place where it stands. Reading goes on past it. */
export interface Problem {
  /** What is wrong and what would do, as a sentence for the writer. */
  readonly message: string;
  /** Where it stands, in offsets of the whole file. */
  readonly span: Span;
  /** An `error` makes the line useless; a `warning` is worth a look; `information` does no harm. */
  readonly severity: 'error' | 'warning' | 'information';
}
