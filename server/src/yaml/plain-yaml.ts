import { codeUnits } from '../text/code-units.ts';
import { endOfLine, startOfNextLine } from '../text/lines.ts';
import { deepest, readBrackets } from './plain-brackets.ts';
import { type KeyPlace, keyAt, plainText, quotedText } from './plain-texts.ts';
import { endOfBlock, type YamlNode, type YamlPair } from './yaml-node.ts';

/**
 * Reads the YAML that nearly every sequence and front matter is written in: maps and lists with dashes, one-line texts
 * with or without quotes, brackets and braces, comments. Gives the same as the library (`parseYaml`) in a fraction of its time;
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
  /** Where its line end stands, behind that white space. */
  readonly stop: number;
}

/** Undefined when the text holds signs that only the library knows how to take. */
function linesOf(text: string): Line[] | undefined {
  const lines: Line[] = [];
  for (let start = 0; start < text.length; ) {
    const stop = endOfLine(text, start);
    const next = startOfNextLine(text, stop);
    // A CR alone ends no line in YAML.
    if (next === stop + 1 && text.charCodeAt(stop) === carriageReturn) return undefined;
    for (let at = start; at < stop; at++) {
      if (!isPlainUnit(text.charCodeAt(at))) return undefined;
    }
    let end = stop;
    while (end > start && text.charCodeAt(end - 1) === space) end--;
    let content = start;
    while (content < end && text.charCodeAt(content) === space) content++;
    if (content < end && text.charCodeAt(content) !== numberSign) {
      // A directive, or a mark between documents.
      if (content === start && /^(?:%|---|\.\.\.)/.test(text.slice(start, start + 3))) return undefined;
      lines.push({ start, content, indent: content - start, end, stop });
    }
    start = next;
  }
  return lines;
}

/** No tab, no control character, no byte-order mark. */
function isPlainUnit(unit: number): boolean {
  return (unit >= 0x20 && unit < 0x7f) || (unit >= 0xa0 && unit !== 0xfeff);
}

const { carriageReturn, doubleQuote, hyphen, numberSign, openBrace, openBracket, singleQuote, space } =
  codeUnits;

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
    const hasComment = this.#text.charCodeAt(at) === numberSign && at > colonAt + 1;
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
    const isBare = !hasComment && colonAt + 1 === line.end && line.end === line.stop;
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
      const node = readBrackets(this.#text, start, depth);
      return node !== undefined && this.#behind(node, indent) ? node : undefined;
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
    return from >= end || (from > at && this.#text.charCodeAt(from) === numberSign);
  }

  /** The key that a line begins with and the place of its colon. */
  #keyAt(line: Line): KeyPlace | undefined {
    return keyAt(this.#text, line.content, line.end);
  }

  #isBracket(line: Line): boolean {
    const unit = this.#text.charCodeAt(line.content);
    return unit === openBracket || unit === openBrace;
  }

  #isItem(line: Line): boolean {
    return (
      this.#text.charCodeAt(line.content) === hyphen &&
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
}
