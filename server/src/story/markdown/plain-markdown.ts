import { codeUnits } from '../../text/code-units.ts';
import { endOfLine, startOfNextLine } from '../../text/lines.ts';
import type { MarkdownGroup, MarkdownNode } from './markdown-node.ts';

/**
 * Reads the markdown that nearly every page of a story is written in: lines of text, headings, pictures and the
 * teacher's notes in quotes. Gives the same as the library (`parseMarkdown`) in a fraction of its time; undefined for a
 * page with anything else in it, such as emphasis, lists or indented lines.
 */
export function parsePlainMarkdown(source: string): readonly MarkdownNode[] | undefined {
  const blocks: (MarkdownGroup | undefined)[] = [];
  let open: Paragraph | Quote | undefined;
  for (let start = 0; start < source.length; ) {
    const end = endOfLine(source, start);
    const first = firstSign(source, start, end);
    // An indented line may be code.
    if (first !== -1 && first !== start) return undefined;
    const kind = first === -1 ? 'blank' : kindOf(source.charCodeAt(start));
    // A line right under a quote may belong to it.
    if (open instanceof Quote && kind !== 'blank' && kind !== 'quote') return undefined;
    if (open !== undefined && open.kind !== kind) {
      blocks.push(open.block());
      open = undefined;
    }
    if (kind === 'heading') {
      blocks.push(headingOf(source, start, end));
    } else if (kind !== 'blank') {
      open ??= kind === 'quote' ? new Quote(source, start) : new Paragraph(source, start);
      if (!open.add(start, end)) return undefined;
    }
    start = startOfNextLine(source, end);
  }
  if (open !== undefined) blocks.push(open.block());
  const read = blocks.filter((block) => block !== undefined);
  return read.length === blocks.length ? read : undefined;
}

const { ampersand, exclamationMark, greaterThan, numberSign, openBracket, space } = codeUnits;

/** What a line begins that is neither blank nor indented. */
function kindOf(firstUnit: number): 'quote' | 'heading' | 'paragraph' {
  if (firstUnit === greaterThan) return 'quote';
  return firstUnit === numberSign ? 'heading' : 'paragraph';
}

/** Where the first sign of a line stands; -1 for a blank line. */
function firstSign(source: string, start: number, end: number): number {
  for (let at = start; at < end; at++) {
    if (source.charCodeAt(at) !== space) return at;
  }
  return -1;
}

/** Lines of text and pictures. */
class Paragraph {
  readonly kind = 'paragraph';
  readonly #source: string;
  readonly #start: number;
  readonly #children: MarkdownNode[] = [];
  /** Where the text begins that is not yet a child. */
  #textStart: number;
  /** The end of the last line, with and without the white space behind it. */
  #end = 0;
  #textEnd = 0;

  constructor(source: string, start: number) {
    this.#source = source;
    this.#start = start;
    this.#textStart = start;
  }

  /** False for a line that may be more than text and pictures. */
  add(start: number, end: number): boolean {
    // White space at the end of an inner line, or behind a picture, is left to the library.
    if (this.#end !== this.#textEnd || !mayBeginText(this.#source, start, end)) return false;
    for (let at = start; at < end; ) {
      const unit = this.#source.charCodeAt(at);
      if (unit === exclamationMark && this.#source.charCodeAt(at + 1) === openBracket) {
        const picture = pictureAt(this.#source, at, end);
        if (picture === undefined || this.#source.charCodeAt(picture.span.end) === space) return false;
        this.#addText(at);
        this.#children.push(picture);
        at = this.#textStart = picture.span.end;
      } else if (isMarkup(this.#source, unit, at)) {
        return false;
      } else {
        at++;
      }
    }
    this.#end = end;
    this.#textEnd = end;
    while (this.#source.charCodeAt(this.#textEnd - 1) === space) this.#textEnd--;
    return true;
  }

  block(): MarkdownGroup {
    this.#addText(this.#textEnd);
    return { kind: 'paragraph', children: this.#children, span: { start: this.#start, end: this.#end } };
  }

  #addText(end: number): void {
    const start = this.#textStart;
    if (end > start) {
      this.#children.push({ kind: 'text', text: this.#source.slice(start, end), span: { start, end } });
    }
  }
}

/** Lines with a `>` in front of them, one paragraph of one line. */
class Quote {
  readonly kind = 'quote';
  readonly #source: string;
  readonly #start: number;
  readonly #paragraphs: MarkdownGroup[] = [];
  #end = 0;
  /** True when the line before was text, so that the next would run on. */
  #isOpen = false;

  constructor(source: string, start: number) {
    this.#source = source;
    this.#start = start;
  }

  add(start: number, end: number): boolean {
    let content = start + 1;
    if (content === end) {
      this.#isOpen = false;
      return true;
    }
    if (this.#source.charCodeAt(content) === space) content++;
    // The text of two lines has the mark between them, which the library takes out.
    const hasMargin =
      this.#source.charCodeAt(content) === space || this.#source.charCodeAt(end - 1) === space;
    if (this.#isOpen || hasMargin || content === end) return false;
    const paragraph = new Paragraph(this.#source, content);
    if (isBlockSign(this.#source.charCodeAt(content)) || !paragraph.add(content, end)) return false;
    this.#paragraphs.push(paragraph.block());
    this.#isOpen = true;
    this.#end = end;
    return true;
  }

  /** Undefined when it begins or ends with an empty line of its own. */
  block(): MarkdownGroup | undefined {
    const first = this.#paragraphs[0];
    if (first === undefined || first.span.start > this.#start + 2 || !this.#isOpen) return undefined;
    return { kind: 'quote', children: this.#paragraphs, span: { start: this.#start, end: this.#end } };
  }
}

/** A line with up to six number signs, a space and text that ends in none. */
function headingOf(source: string, start: number, end: number): MarkdownGroup | undefined {
  let at = start;
  while (source.charCodeAt(at) === numberSign) at++;
  if (at - start > 6 || source.charCodeAt(at) !== space) return undefined;
  while (at < end && source.charCodeAt(at) === space) at++;
  const text = new Paragraph(source, at);
  let textEnd = end;
  while (textEnd > at && source.charCodeAt(textEnd - 1) === space) textEnd--;
  if (textEnd === at || source.charCodeAt(textEnd - 1) === numberSign || !text.add(at, textEnd)) {
    return undefined;
  }
  return { kind: 'heading', children: text.block().children, span: { start, end } };
}

/** `![note](address)` without marks in the note or anything unusual in the address. */
function pictureAt(source: string, start: number, end: number): MarkdownNode | undefined {
  let at = start + 2;
  for (; source.charAt(at) !== ']'; at++) {
    if (at >= end || isMarkup(source, source.charCodeAt(at), at)) return undefined;
  }
  const note = source.slice(start + 2, at);
  if (source.charAt(at + 1) !== '(') return undefined;
  const close = source.indexOf(')', at + 2);
  if (close === -1 || close >= end) return undefined;
  const address = source.slice(at + 2, close);
  if (!/^[\w./-]*$/.test(address)) return undefined;
  return { kind: 'picture', note, from: { address }, span: { start, end: close + 1 } };
}

/** False for a line that may begin a block of its own: a list, a fence, an underline. */
function mayBeginText(source: string, start: number, end: number): boolean {
  const unit = source.charCodeAt(start);
  if (unit >= 48 && unit <= 57)
    return !/^\d{1,9}[.)](?: |$)/.test(source.slice(start, Math.min(end, start + 11)));
  return !isBlockSign(unit);
}

/** `#`, `>`, `-`, `+`, `=` and `~`. */
function isBlockSign(unit: number): boolean {
  return unit === 35 || unit === 62 || unit === 45 || unit === 43 || unit === 61 || unit === 126;
}

/** Signs that mean something inside a line, and those that no text should hold. */
function isMarkup(source: string, unit: number, at: number): boolean {
  if (unit >= 97 && unit <= 122) return false;
  if (unit === ampersand) return /[A-Za-z#]/.test(source.charAt(at + 1));
  return (
    unit < 32 ||
    unit === 42 ||
    unit === 60 ||
    (unit >= 91 && unit <= 96 && unit !== 94) ||
    unit === 127 ||
    unit === 0xfeff
  );
}
