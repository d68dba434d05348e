import { decodeNamedCharacterReference } from 'decode-named-character-reference';
import type { Image, ImageReference, Nodes, Text } from 'mdast';
import type { Span } from '../text/span.ts';

/** What the child sees of a paragraph or heading, and where each of its UTF-16 units stands in the page's source. */
export interface ChildText {
  readonly visible: string;
  /** For each unit of `visible` where its source begins. */
  readonly starts: readonly number[];
  /** For each unit of `visible` where its source ends. */
  readonly ends: readonly number[];
  /** The pictures that stand in it. */
  readonly images: readonly (Image | ImageReference)[];
}

/**
 * Takes the child's text out of a paragraph or heading: text, emphasis and the words of links, with escapes and
 * character references resolved. Pictures and code leave a space, a break leaves a line end, HTML and comments nothing.
 */
export function childText(paragraph: Nodes, source: string): ChildText {
  const images: (Image | ImageReference)[] = [];
  const builder = new Builder();
  const waiting: Nodes[] = [paragraph];
  for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
    const span = spanOf(node);
    if (node.type === 'text') addText(builder, node, span, source);
    else if (node.type === 'break') builder.add('\n', span);
    else if (node.type === 'html') {
      if (/^<br[\s/>]/i.test(node.value)) builder.add('\n', span);
    } else if (node.type === 'image' || node.type === 'imageReference') {
      images.push(node);
      builder.add(' ', span);
    } else if (node.type === 'inlineCode') builder.add(' ', span);
    else if ('children' in node) {
      for (let index = node.children.length - 1; index >= 0; index--) {
        const child = node.children[index];
        if (child !== undefined) waiting.push(child);
      }
    }
  }
  return { visible: builder.text(), starts: builder.starts, ends: builder.ends, images };
}

/** Where a node stands in its page. */
export function spanOf(node: Nodes): Span {
  return { start: node.position?.start.offset ?? 0, end: node.position?.end.offset ?? 0 };
}

class Builder {
  readonly #pieces: string[] = [];
  readonly starts: number[] = [];
  readonly ends: number[] = [];

  add(piece: string, span: Span): void {
    this.#pieces.push(piece);
    for (let unit = 0; unit < piece.length; unit++) {
      this.starts.push(span.start);
      this.ends.push(span.end);
    }
  }

  /** Adds a piece that stands in the source just as the child sees it, from `start` on. */
  addPlain(piece: string, start: number): void {
    this.#pieces.push(piece);
    for (let unit = 0; unit < piece.length; unit++) {
      this.starts.push(start + unit);
      this.ends.push(start + unit + 1);
    }
  }

  text(): string {
    return this.#pieces.join('');
  }
}

function addText(builder: Builder, node: Text, span: Span, source: string): void {
  const { value } = node;
  if (span.end - span.start === value.length && source.startsWith(value, span.start)) {
    builder.addPlain(value, span.start);
    return;
  }
  let at = span.start;
  let done = 0;
  while (done < value.length && at < span.end) {
    const unit = source[at];
    const wanted = value[done];
    if (wanted === '\n' || wanted === '\r') {
      const lineEnd = skipped(source, at, span.end, ' \t');
      if (source[lineEnd] === wanted) {
        const crlf = wanted === '\r' && value[done + 1] === '\n' && source[lineEnd + 1] === '\n';
        const length = crlf ? 2 : 1;
        builder.addPlain(value.slice(done, done + length), lineEnd);
        done += length;
        // The next line's indentation is not part of the text.
        at = skipped(source, lineEnd + length, span.end, ' \t');
        continue;
      }
    }
    const length = unit === '&' ? referenceLength(source, at) : unit === '\\' ? escapeLength(source, at) : 1;
    const meant = length === 1 ? 1 : meantLength(source.slice(at, at + length));
    builder.add(value.slice(done, done + meant), { start: at, end: Math.min(at + length, span.end) });
    done += meant;
    at += length;
  }
  if (done < value.length) builder.add(value.slice(done), { start: span.end, end: span.end });
}

function skipped(source: string, start: number, end: number, marks: string): number {
  let at = start;
  while (at < end && marks.includes(source.charAt(at))) at++;
  return at;
}

function escapeLength(source: string, at: number): number {
  return /^[!-/:-@[-`{-~]$/.test(source.charAt(at + 1)) ? 2 : 1;
}

const reference = /&(?:#[xX][0-9a-fA-F]{1,6}|#[0-9]{1,7}|[A-Za-z][A-Za-z0-9]{1,31});/y;

/** The length of the character reference at `at`, such as `&eacute;`; 1 when there is none. */
function referenceLength(source: string, at: number): number {
  reference.lastIndex = at;
  const found = reference.exec(source)?.[0];
  if (found === undefined) return 1;
  return found[1] === '#' || decodeNamedCharacterReference(found.slice(1, -1)) !== false ? found.length : 1;
}

/** How many units an escape or a reference stands for. */
function meantLength(written: string): number {
  if (written.startsWith('\\')) return 1;
  if (written.startsWith('&#')) {
    const hexadecimal = written[2] === 'x' || written[2] === 'X';
    const code = Number.parseInt(written.slice(hexadecimal ? 3 : 2, -1), hexadecimal ? 16 : 10);
    return code > 0xffff && code <= 0x10ffff && (code & 0xfffe) !== 0xfffe ? 2 : 1;
  }
  return (decodeNamedCharacterReference(written.slice(1, -1)) || ' ').length;
}
