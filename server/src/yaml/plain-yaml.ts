import type { Span } from '../text/span.ts';
import { endOfBlock, type YamlNode, type YamlPair, type YamlText } from './yaml-node.ts';

/**
 * Reads the YAML that nearly every sequence and front matter is written in: maps and lists with dashes, one-line texts
 * with or without quotes, brackets and braces, comments. Gives the same as the library (`parseYaml`), which takes ten times as long;
 * null for a text without content, and undefined for every text with more in it than this reader is sure of, a fault above all.
 */
export function parsePlainYaml(text: string): YamlNode | null | undefined {
  const lines = linesOf(text);
  if (lines === undefined) return undefined;
  const first = lines[0];
  if (first === undefined) return null;
  const reader = new PlainReader(text, lines);
  const node = reader.block(first.indent, 0);
  return reader.isAtEnd ? node : undefined;
}

/** A line that is neither blank nor a comment. */
interface Line {
  readonly start: number;
  /** Where what is read of it begins; moved behind the dash of a list item. */
  content: number;
  /** How far `content` is from `start`. */
  indent: number;
  /** Where its text ends, without white space. */
  readonly end: number;
  /** Where the line ends in the text: at its line end. */
  readonly stop: number;
}

/** Undefined when the text holds signs that only the library knows how to take. */
function linesOf(text: string): Line[] | undefined {
  const lines: Line[] = [];
  for (let start = 0; start < text.length; ) {
    const found = text.indexOf('\n', start);
    const stop = found === -1 ? text.length : found;
    let end = stop;
    if (found !== -1 && text.charCodeAt(end - 1) === carriageReturn && end > start) end--;
    for (let at = start; at < end; at++) {
      if (!isPlainUnit(text.charCodeAt(at))) return undefined;
    }
    while (end > start && text.charCodeAt(end - 1) === space) end--;
    let content = start;
    while (content < end && text.charCodeAt(content) === space) content++;
    if (content < end && text.charCodeAt(content) !== hash) {
      // A directive, or a mark between documents.
      if (content === start && /^(?:%|---|\.\.\.)/.test(text.slice(start, start + 3))) return undefined;
      lines.push({ start, content, indent: content - start, end, stop });
    }
    start = stop + 1;
  }
  return lines;
}

/** No tab, no control character, no byte-order mark. */
function isPlainUnit(unit: number): boolean {
  return (unit >= 0x20 && unit < 0x7f) || (unit >= 0xa0 && unit !== 0xfeff);
}

const space = 32;
const hash = 35;
const carriageReturn = 13;
const dash = 45;
const colon = 58;
const comma = 44;
const doubleQuote = 34;
const singleQuote = 39;

/** Brackets and blocks one in another, at most; no sequence has more than four. */
const deepest = 12;
/** The longest key that YAML allows on the line of its value is 1,024. */
const longestKey = 200;

class PlainReader {
  readonly #text: string;
  readonly #lines: readonly Line[];
  #next = 0;

  constructor(text: string, lines: readonly Line[]) {
    this.#text = text;
    this.#lines = lines;
  }

  get isAtEnd(): boolean {
    return this.#next === this.#lines.length;
  }

  /** The list or map whose first line is the next one. */
  block(indent: number, depth: number): YamlNode | undefined {
    const line = this.#lines[this.#next];
    if (line === undefined || depth > deepest) return undefined;
    if (this.#isItem(line)) return this.#list(indent, depth);
    return this.#keyAt(line) === undefined ? undefined : this.#map(indent, depth);
  }

  #list(indent: number, depth: number): YamlNode | undefined {
    const items: YamlNode[] = [];
    const start = this.#lines[this.#next]?.content ?? 0;
    for (let line = this.#at(indent); line !== undefined && this.#isItem(line); line = this.#at(indent)) {
      let content = line.content + 1;
      while (content < line.end && this.#text.charCodeAt(content) === space) content++;
      if (content >= line.end) return undefined;
      line.content = content;
      line.indent = content - line.start;
      if (this.#isItem(line)) return undefined;
      const item =
        this.#keyAt(line) === undefined
          ? this.#onLine(line, content, indent, depth)
          : this.#map(line.indent, depth + 1);
      if (item === undefined || this.#isDeeper(indent)) return undefined;
      items.push(item);
    }
    return { kind: 'list', items, flow: false, span: { start, end: endOfBlock(items.at(-1), null, start) } };
  }

  #map(indent: number, depth: number): YamlNode | undefined {
    const pairs: YamlPair[] = [];
    const start = this.#lines[this.#next]?.content ?? 0;
    for (let line = this.#at(indent); line !== undefined && !this.#isItem(line); line = this.#at(indent)) {
      const found = this.#keyAt(line);
      if (found === undefined) return undefined;
      const value = this.#valueOf(line, found.colon, indent, depth);
      if (value === undefined || this.#isDeeper(indent)) return undefined;
      pairs.push({ key: found.key, value });
    }
    const last = pairs.at(-1);
    return {
      kind: 'map',
      pairs,
      flow: false,
      span: { start, end: endOfBlock(last?.value, last?.key, start) },
    };
  }

  /** What stands behind a colon, on its line or under it. */
  #valueOf(line: Line, colonAt: number, indent: number, depth: number): YamlNode | undefined {
    let at = colonAt + 1;
    while (at < line.end && this.#text.charCodeAt(at) === space) at++;
    const hasComment = this.#text.charCodeAt(at) === hash && at > colonAt + 1;
    if (at < line.end && !hasComment) return this.#onLine(line, at, indent, depth);
    this.#next++;
    const below = this.#lines[this.#next];
    if (below !== undefined && below.indent > indent) {
      return this.#isBracket(below)
        ? this.#onLine(below, below.content, indent, depth + 1)
        : this.block(below.indent, depth + 1);
    }
    if (below !== undefined && below.indent === indent && this.#isItem(below)) {
      return this.#list(indent, depth + 1);
    }
    // Where the empty value stands behind white space or a comment is the library's to say.
    const isBare = !hasComment && colonAt + 1 === line.end && line.end === this.#lineEndOf(line);
    return isBare ? { kind: 'text', text: '', style: 'plain', span: { start: at, end: at } } : undefined;
  }

  /** A value that begins on a line; brackets may run on over the lines below. */
  #onLine(line: Line, start: number, indent: number, depth: number): YamlNode | undefined {
    const unit = this.#text.charCodeAt(start);
    if (unit === doubleQuote || unit === singleQuote) {
      const quoted = quotedText(this.#text, start, line.end);
      if (quoted === undefined || !this.#isRest(quoted.span.end, line.end)) return undefined;
      this.#next++;
      return quoted;
    }
    if (unit === openBracket || unit === openBrace) {
      const flow = new FlowReader(this.#text, start, depth);
      const node = flow.node();
      if (node === undefined) return undefined;
      return this.#behind(node, indent) ? node : undefined;
    }
    const plain = plainText(this.#text, start, line.end);
    if (plain === undefined) return undefined;
    this.#next++;
    return plain;
  }

  /** Goes to the line behind brackets; false when something follows them or a line of theirs stands too far left. */
  #behind(node: YamlNode, indent: number): boolean {
    for (let line = this.#lines[this.#next]; line !== undefined; line = this.#lines[this.#next]) {
      this.#next++;
      if (node.span.end <= line.stop) return this.#isRest(node.span.end, line.end);
      const below = this.#lines[this.#next];
      if (below === undefined || below.indent <= indent) return false;
    }
    return false;
  }

  /** True when nothing but a comment stands from `at` to the end of its line. */
  #isRest(at: number, end: number): boolean {
    let from = at;
    while (from < end && this.#text.charCodeAt(from) === space) from++;
    return from >= end || (from > at && this.#text.charCodeAt(from) === hash);
  }

  /** The key that a line begins with and the place of its colon. */
  #keyAt(line: Line): { readonly key: YamlText; readonly colon: number } | undefined {
    return keyAt(this.#text, line.content, line.end);
  }

  #isBracket(line: Line): boolean {
    const unit = this.#text.charCodeAt(line.content);
    return unit === openBracket || unit === openBrace;
  }

  #isItem(line: Line): boolean {
    return (
      this.#text.charCodeAt(line.content) === dash &&
      (line.content + 1 >= line.end || this.#text.charCodeAt(line.content + 1) === space)
    );
  }

  /** The next line when it stands at `indent`. */
  #at(indent: number): Line | undefined {
    const line = this.#lines[this.#next];
    return line?.indent === indent ? line : undefined;
  }

  #isDeeper(indent: number): boolean {
    return (this.#lines[this.#next]?.indent ?? -1) > indent;
  }

  /** The end of a line with the white space behind its text. */
  #lineEndOf(line: Line): number {
    return this.#text.charCodeAt(line.stop - 1) === carriageReturn ? line.stop - 1 : line.stop;
  }
}

const openBracket = 91;
const closeBracket = 93;
const openBrace = 123;
const closeBrace = 125;

/** Reads lists in brackets and maps in braces, which may run over several lines but hold no comment. */
class FlowReader {
  readonly #text: string;
  readonly #depth: number;
  #at: number;

  constructor(text: string, at: number, depth: number) {
    this.#text = text;
    this.#at = at;
    this.#depth = depth;
  }

  node(depth = this.#depth): YamlNode | undefined {
    if (depth > deepest) return undefined;
    return this.#text.charCodeAt(this.#at) === openBracket ? this.#list(depth) : this.#map(depth);
  }

  #list(depth: number): YamlNode | undefined {
    const start = this.#at++;
    const items: YamlNode[] = [];
    for (;;) {
      this.#skip();
      if (this.#text.charCodeAt(this.#at) === closeBracket) break;
      const item = this.#value(depth);
      if (item === undefined) return undefined;
      items.push(item);
      if (!this.#isSeparated(closeBracket)) return undefined;
    }
    this.#at++;
    return { kind: 'list', items, flow: true, span: { start, end: this.#at } };
  }

  #map(depth: number): YamlNode | undefined {
    const start = this.#at++;
    const pairs: YamlPair[] = [];
    for (;;) {
      this.#skip();
      if (this.#text.charCodeAt(this.#at) === closeBrace) break;
      const found = keyAt(this.#text, this.#at, this.#lineEnd());
      if (found === undefined) return undefined;
      this.#at = found.colon + 1;
      while (this.#text.charCodeAt(this.#at) === space) this.#at++;
      const value = this.#value(depth);
      if (value === undefined) return undefined;
      pairs.push({ key: found.key, value });
      if (!this.#isSeparated(closeBrace)) return undefined;
    }
    this.#at++;
    return { kind: 'map', pairs, flow: true, span: { start, end: this.#at } };
  }

  #value(depth: number): YamlNode | undefined {
    const unit = this.#text.charCodeAt(this.#at);
    if (unit === openBracket || unit === openBrace) return this.node(depth + 1);
    const end = this.#lineEnd();
    const text =
      unit === doubleQuote || unit === singleQuote
        ? quotedText(this.#text, this.#at, end)
        : plainTextInBrackets(this.#text, this.#at, end);
    if (text !== undefined) this.#at = text.span.end;
    return text;
  }

  /** Goes past a comma, or to the closing sign. */
  #isSeparated(close: number): boolean {
    this.#skip();
    const unit = this.#text.charCodeAt(this.#at);
    if (unit === comma) {
      this.#at++;
      return true;
    }
    return unit === close;
  }

  /** Past white space and line ends. */
  #skip(): void {
    for (;;) {
      const unit = this.#text.charCodeAt(this.#at);
      if (unit !== space && unit !== 10 && unit !== carriageReturn) return;
      this.#at++;
    }
  }

  #lineEnd(): number {
    const end = this.#text.indexOf('\n', this.#at);
    return end === -1 ? this.#text.length : end;
  }
}

/** A text in quotation marks on one line, without escapes but the doubled single mark. */
function quotedText(text: string, start: number, end: number): YamlText | undefined {
  const mark = text.charCodeAt(start);
  let doubled = false;
  for (let at = start + 1; at < end; at++) {
    const unit = text.charCodeAt(at);
    if (unit === 92 && mark === doubleQuote) return undefined;
    if (unit !== mark) continue;
    if (mark === singleQuote && text.charCodeAt(at + 1) === singleQuote) {
      doubled = true;
      at++;
      continue;
    }
    const written = text.slice(start + 1, at);
    return {
      kind: 'text',
      text: doubled ? written.replaceAll("''", "'") : written,
      style: 'quoted',
      span: { start, end: at + 1 },
    };
  }
  return undefined;
}

/** A text without quotes that ends with its line or at a comment. */
function plainText(text: string, start: number, lineEnd: number): YamlText | undefined {
  if (!mayBegin(text.charCodeAt(start))) return undefined;
  let end = lineEnd;
  for (let at = start + 1; at < lineEnd; at++) {
    const unit = text.charCodeAt(at);
    if (unit === colon && (at + 1 >= lineEnd || text.charCodeAt(at + 1) === space)) return undefined;
    if (unit === hash && text.charCodeAt(at - 1) === space) {
      end = at;
      break;
    }
  }
  return plain(text, { start, end });
}

/** A text without quotes that ends at a comma or a closing sign of its own line. */
function plainTextInBrackets(text: string, start: number, lineEnd: number): YamlText | undefined {
  if (!mayBegin(text.charCodeAt(start))) return undefined;
  for (let at = start + 1; at < lineEnd; at++) {
    const unit = text.charCodeAt(at);
    if (
      unit === colon ||
      unit === hash ||
      unit === openBracket ||
      unit === openBrace ||
      unit === carriageReturn
    ) {
      return undefined;
    }
    if (unit === comma || unit === closeBracket || unit === closeBrace)
      return plain(text, { start, end: at });
  }
  const next = /\S/.exec(text.slice(lineEnd))?.[0];
  return next === ']' || next === '}' ? plain(text, { start, end: lineEnd }) : undefined;
}

function plain(text: string, { start, end }: Span): YamlText {
  let last = end;
  while (text.charCodeAt(last - 1) === space) last--;
  return { kind: 'text', text: text.slice(start, last), style: 'plain', span: { start, end: last } };
}

/** Letters, digits and the signs that mean nothing in front of a text. */
function mayBegin(unit: number): boolean {
  return isLetterOrDigit(unit) || unit === 40 || unit === 46 || unit === 47 || unit === 95 || unit === 126;
}

function isLetterOrDigit(unit: number): boolean {
  return (
    (unit >= 97 && unit <= 122) || (unit >= 65 && unit <= 90) || (unit >= 48 && unit <= 57) || unit >= 0xa1
  );
}

/** A key of letters, digits, spaces, points, hyphens, low lines and apostrophes, or in quotes, up to its colon. */
function keyAt(
  text: string,
  start: number,
  lineEnd: number,
): { readonly key: YamlText; readonly colon: number } | undefined {
  const first = text.charCodeAt(start);
  if (first === doubleQuote || first === singleQuote) {
    const key = quotedText(text, start, lineEnd);
    const at = key?.span.end ?? 0;
    return key !== undefined && at - start < longestKey && isColon(text, at, lineEnd)
      ? { key, colon: at }
      : undefined;
  }
  if (!isLetterOrDigit(first)) return undefined;
  const most = Math.min(lineEnd, start + longestKey);
  for (let at = start + 1; at < most; at++) {
    const unit = text.charCodeAt(at);
    if (unit === colon) {
      return isColon(text, at, lineEnd) ? { key: plain(text, { start, end: at }), colon: at } : undefined;
    }
    const isPlain = isLetterOrDigit(unit) || unit === space || unit === dash || unit === 95 || unit === 46;
    if (!isPlain && unit !== singleQuote) return undefined;
  }
  return undefined;
}

function isColon(text: string, at: number, lineEnd: number): boolean {
  return text.charCodeAt(at) === colon && (at + 1 >= lineEnd || text.charCodeAt(at + 1) === space);
}
