/** A stretch of text, in UTF-16 code units: `start` is inside, `end` is just past it. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

/** The same span, moved by `by` code units. */
export function shifted(span: Span, by: number): Span {
  return { start: span.start + by, end: span.end + by };
}
