import type { Span } from '../text/span.ts';

/** A stretch of a file and what to put in its place. */
export interface TextEdit {
  /** In offsets of the file; empty where something is put in. */
  readonly span: Span;
  readonly text: string;
}

/** The text after edits that do not overlap, in any order. */
export function edited(text: string, edits: readonly TextEdit[]): string {
  let result = text;
  for (const { span, text: put } of [...edits].sort((one, other) => other.span.start - one.span.start)) {
    result = result.slice(0, span.start) + put + result.slice(span.end);
  }
  return result;
}

/** The line end a file uses: that of its first line. */
export function lineEndOf(text: string): string {
  return /\r\n|\r|\n/.exec(text)?.[0] ?? '\n';
}
