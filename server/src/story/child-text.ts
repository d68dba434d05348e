import type { Span } from '../text/span.ts';
import type { MarkdownNode, MarkdownPicture, MarkdownText } from './markdown/markdown-node.ts';

/** What the child sees of a paragraph or heading, and where each of its UTF-16 units stands in the page's source. */
export interface ChildText {
  readonly visible: string;
  /** For each unit of `visible` where its source begins. */
  readonly starts: readonly number[];
  /** For each unit of `visible` where its source ends. */
  readonly ends: readonly number[];
  /** The pictures that stand in it. */
  readonly pictures: readonly MarkdownPicture[];
}

/**
 * Takes the child's text out of a paragraph or heading: text, emphasis and the words of links, with escapes and
 * character references resolved. Pictures and code leave a space, a break leaves a line end, HTML and comments nothing.
 */
export function childText(paragraph: MarkdownNode): ChildText {
  const pictures: MarkdownPicture[] = [];
  const builder = new Builder();
  const waiting: MarkdownNode[] = [paragraph];
  for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
    if (node.kind === 'text') builder.addText(node);
    else if (node.kind === 'line break') builder.add('\n', node.span);
    else if (node.kind === 'html') {
      if (/^<br[\s/>]/i.test(node.html)) builder.add('\n', node.span);
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
  return { visible: builder.text(), starts: builder.starts, ends: builder.ends, pictures };
}

class Builder {
  readonly #pieces: string[] = [];
  readonly starts: number[] = [];
  readonly ends: number[] = [];

  /** A sign that stands for what the source has in `span`. */
  add(sign: string, span: Span): void {
    this.#pieces.push(sign);
    this.starts.push(span.start);
    this.ends.push(span.end);
  }

  addText({ text, places, span }: MarkdownText): void {
    this.#pieces.push(text);
    for (let unit = 0; unit < text.length; unit++) {
      this.starts.push(places?.starts[unit] ?? span.start + unit);
      this.ends.push(places?.ends[unit] ?? span.start + unit + 1);
    }
  }

  text(): string {
    return this.#pieces.join('');
  }
}
