import type { Span } from '../../server/src/text/span.ts';

/** A text whose marks `⟦…⟧` have been taken out, and where they were. */
export function markedText(marked: string): { readonly text: string; readonly spans: readonly Span[] } {
  const spans: Span[] = [];
  let text = '';
  for (const piece of marked.split(/([⟦⟧])/)) {
    if (piece === '⟦') spans.push({ start: text.length, end: -1 });
    else if (piece === '⟧') {
      const open = spans.pop();
      if (open === undefined || open.end !== -1) throw new Error(`A mark is closed but not open: ${marked}`);
      spans.push({ start: open.start, end: text.length });
    } else text += piece;
  }
  if (spans.some(({ end }) => end === -1)) throw new Error(`A mark is open but not closed: ${marked}`);
  return { text, spans };
}

/** A text with `⟦…⟧` around spans that do not overlap; equal spans are marked once. */
export function withMarks(text: string, spans: readonly Span[]): string {
  const different = [...new Map(spans.map((span) => [`${span.start} ${span.end}`, span])).values()];
  return different
    .sort((left, right) => right.start - left.start)
    .reduce(
      (all, { start, end }) => `${all.slice(0, start)}⟦${all.slice(start, end)}⟧${all.slice(end)}`,
      text,
    );
}
