import type { Span } from '../text/span.ts';
import { setBreak } from './line-ends.ts';
import type { MarkdownNode, MarkdownPicture, MarkdownText, UnitPlaces } from './markdown/markdown-node.ts';

/** What the child sees of a paragraph or heading. */
export interface ChildText {
  readonly visible: string;
  /** Where a stretch of `visible`, one UTF-16 unit at least, stands in the page's source. */
  sourceOf(visible: Span): Span;
  /** The pictures that stand in it. */
  readonly pictures: readonly MarkdownPicture[];
}

/**
 * Takes the child's text out of a paragraph or heading: text, emphasis and the words of links, with escapes and
 * character references resolved. Pictures and code leave a space, a break its sign, HTML and comments nothing.
 */
export function childText(paragraph: MarkdownNode): ChildText {
  const pictures: MarkdownPicture[] = [];
  const builder = new Builder();
  const waiting: MarkdownNode[] = [paragraph];
  for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
    if (node.kind === 'text') builder.addText(node);
    else if (node.kind === 'line break') builder.add(setBreak, node.span);
    else if (node.kind === 'html') {
      if (/^<br[\s/>]/i.test(node.html)) builder.add(setBreak, node.span);
    } else if (node.kind === 'picture') {
      pictures.push(node);
      builder.add(' ', node.span);
    } else if (node.kind === 'code') builder.add(' ', node.span);
    else if ('children' in node) {
      for (let index = node.children.length - 1; index >= 0; index--) {
        const child = node.children[index];
        if (child !== undefined) waiting.push(child);
      }
    }
  }
  const { visible, runs } = builder;
  return {
    visible,
    sourceOf: ({ start, end }) => ({
      start: sourceOfUnit(runs, start).start,
      end: sourceOfUnit(runs, end - 1).end,
    }),
    pictures,
  };
}

/** A piece of the visible text from one piece of the source. */
interface Run {
  /** Its first unit in the visible text. */
  readonly from: number;
  /** In the source. */
  readonly span: Span;
  /** `sign` stands as a whole for the span, `copy` is its very text, `places` tells of each unit. */
  readonly by: 'sign' | 'copy' | UnitPlaces;
}

class Builder {
  readonly runs: Run[] = [];
  visible = '';

  /** A sign that stands for what the source has in `span`. */
  add(sign: string, span: Span): void {
    this.runs.push({ from: this.visible.length, span, by: 'sign' });
    this.visible += sign;
  }

  addText({ text, places, span }: MarkdownText): void {
    this.runs.push({ from: this.visible.length, span, by: places ?? 'copy' });
    this.visible += text;
  }
}

/** Where a unit of the visible text stands in the source. */
function sourceOfUnit(runs: readonly Run[], unit: number): Span {
  const run = runAt(runs, unit);
  if (run === undefined) return { start: 0, end: 0 };
  const { from, span, by } = run;
  if (by === 'sign') return span;
  const at = unit - from;
  return by === 'copy'
    ? { start: span.start + at, end: span.start + at + 1 }
    : { start: by.starts[at] ?? span.start, end: by.ends[at] ?? span.end };
}

function runAt(runs: readonly Run[], unit: number): Run | undefined {
  let low = 0;
  let high = runs.length;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((runs[middle]?.from ?? 0) <= unit) low = middle;
    else high = middle;
  }
  return runs[low];
}
