import { codeUnits } from '../text/code-units.ts';
import { keyAt, plainTextInBrackets, quotedText } from './plain-texts.ts';
import type { YamlNode, YamlPair } from './yaml-node.ts';

/** Brackets and blocks one in another, at most; no sequence has more than four. */
export const deepest = 12;

/**
 * Reads the list in brackets or map in braces that begins at `at`, inside `depth` others. It may run over several lines
 * but hold no comment; undefined for one that is not plain.
 */
export function readBrackets(text: string, at: number, depth: number): YamlNode | undefined {
  return new BracketReader(text, at, depth).node();
}

const {
  carriageReturn,
  closeBrace,
  closeBracket,
  comma,
  doubleQuote,
  lineFeed,
  openBrace,
  openBracket,
  singleQuote,
  space,
} = codeUnits;

class BracketReader {
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
      if (unit !== space && unit !== lineFeed && unit !== carriageReturn) return;
      this.#at++;
    }
  }

  #lineEnd(): number {
    const end = this.#text.indexOf('\n', this.#at);
    return end === -1 ? this.#text.length : end;
  }
}
