import { dottedEnd, holdsDigit, isCapitalAt, numberEnd, withoutInvisible, wordEnd } from './letters.ts';
import { lineEnds } from './line-ends.ts';
import { abbreviations, elisions } from './word-lists.ts';

/** A word, mark or line end of the child's text; offsets are of the visible text. */
export type Token =
  | {
      readonly kind: 'word';
      readonly start: number;
      readonly end: number;
      readonly text: string;
      readonly form: 'word' | 'number' | 'abbreviation';
    }
  | {
      readonly kind: 'mark';
      readonly start: number;
      readonly end: number;
      /** As a sequence names it. */
      readonly mark: string;
      /** Whether it opens or closes a quotation or bracket; `alone` for all other marks. */
      readonly side: 'opens' | 'closes' | 'alone';
    }
  | { readonly kind: 'line-end'; readonly start: number; readonly end: number };

/**
 * Finds the words and marks of a paragraph as the child sees it. An apostrophe belongs to a word inside it and before a
 * clipped one (’til); behind one (the dogs’ beds) it is neither part of the word nor a mark. A hyphen only parts words.
 */
export function tokensOf(visible: string): readonly Token[] {
  const scanner = new Scanner(visible);
  while (scanner.step()) {}
  return scanner.tokens;
}

class Scanner {
  readonly tokens: Token[] = [];
  readonly #text: string;
  #at = 0;
  #openSingle = false;
  #openDouble = false;

  constructor(text: string) {
    this.#text = text;
  }

  /** Reads on by one token or one unit that is none; false at the end. */
  step(): boolean {
    const unit = this.#text[this.#at];
    if (unit === undefined) return false;
    const rule = this.#isLineStart() ? ruleEnd(this.#text, this.#at) : undefined;
    if (rule !== undefined) this.#at = rule;
    else if (unit === ' ' || unit === '\t') this.#at++;
    else if (!this.#word(this.#at)) this.#other(unit);
    return true;
  }

  #isLineStart(): boolean {
    return this.#at === 0 || lineEnds.includes(this.#text.charAt(this.#at - 1));
  }

  #word(from: number): boolean {
    const dotted = dottedEnd(this.#text, from);
    if (dotted > from) return this.#push(dotted, 'abbreviation');
    const number = numberEnd(this.#text, from);
    if (number > from) return this.#push(number, 'number');
    const end = wordEnd(this.#text, from);
    if (end === from) return false;
    if (this.#text[end] === '.' && this.#text[end + 1] !== '.') {
      const known = abbreviations.has(this.#text.slice(from, end));
      if (known || this.#isInitial(from)) return this.#push(end + 1, 'abbreviation');
    }
    return this.#push(end, holdsDigit(this.#text, from, end) ? 'number' : 'word');
  }

  #push(end: number, form: 'word' | 'number' | 'abbreviation'): boolean {
    const start = this.#at;
    this.#at = end;
    this.tokens.push({
      kind: 'word',
      start,
      end,
      text: withoutInvisible(this.#text.slice(start, end)),
      form,
    });
    return true;
  }

  /** A capital with a stop before a capital, at the head of a sentence or behind an abbreviation: J. Hill, Mr. J. Hill. */
  #isInitial(from: number): boolean {
    const text = this.#text;
    if (text[from] === 'I' || !isCapitalAt(text, from) || text[from + 1] !== '.') return false;
    let next = from + 2;
    while (text[next] === ' ' || text[next] === '\t') next++;
    if (next === from + 2 || !isCapitalAt(text, next)) return false;
    const before = this.tokens.at(-1);
    return before === undefined || before.kind !== 'word' || before.form === 'abbreviation';
  }

  #other(unit: string): void {
    if (lineEnds.includes(unit)) {
      const length = unit === '\r' && this.#text[this.#at + 1] === '\n' ? 2 : 1;
      this.tokens.push({ kind: 'line-end', start: this.#at, end: this.#at + length });
      this.#at += length;
    } else if (unit === "'" || unit === '\u2018' || unit === '\u2019') this.#apostrophe(unit);
    else if (unit === '"' || unit === '\u201c' || unit === '\u201d' || '\u201e\u00ab\u00bb'.includes(unit)) {
      this.#quote(unit);
    } else if (unit === '.') this.#stops();
    else if (unit === '-' || unit === '\u2013' || unit === '\u2014' || unit === '\u2015') this.#dash(unit);
    else if ('!?,;:\u2026'.includes(unit)) this.#mark(unit, 1, 'alone');
    else if (unit === '(' || unit === '[') this.#mark(unit, 1, 'opens');
    else if (unit === ')' || unit === ']') this.#mark(unit, 1, 'closes');
    else this.#at++;
  }

  #mark(mark: string, length: number, side: 'opens' | 'closes' | 'alone'): void {
    this.tokens.push({ kind: 'mark', start: this.#at, end: this.#at + length, mark, side });
    this.#at += length;
  }

  #apostrophe(unit: string): void {
    const before = this.#isWordBefore(this.#at);
    const after = wordEnd(this.#text, this.#at + 1);
    if (!before && after > this.#at + 1) {
      const clipped = elisions.has(this.#text.slice(this.#at + 1, after).toLowerCase());
      if (clipped || (unit === '\u2019' && !this.#openSingle)) {
        this.#push(after, 'word');
        return;
      }
    }
    if (unit === '\u2018' || (unit === "'" && !before && this.#isOpening())) {
      this.#openSingle = true;
      this.#mark("'", 1, 'opens');
    } else if (before && !this.#openSingle) {
      this.#at++;
    } else {
      this.#openSingle = false;
      this.#mark("'", 1, 'closes');
    }
  }

  #quote(unit: string): void {
    let opens = unit === '\u201c' || unit === '\u201e' || unit === '\u00ab';
    if (unit === '"') {
      const opening = this.#isOpening();
      const closing = this.#isClosing();
      opens = opening === closing ? !this.#openDouble : opening;
    }
    this.#openDouble = opens;
    this.#mark('"', 1, opens ? 'opens' : 'closes');
  }

  #stops(): void {
    let length = 1;
    while (this.#text[this.#at + length] === '.') length++;
    this.#mark(length === 1 ? '.' : '\u2026', length, 'alone');
  }

  #dash(unit: string): void {
    let length = 1;
    while (this.#text[this.#at + length] === unit) length++;
    const spaced = isSpace(this.#text[this.#at - 1]) && isSpace(this.#text[this.#at + length]);
    // One hyphen parts words; it is a dash only with white space on both sides.
    if (unit === '-' && length === 1 && !spaced) this.#at++;
    else this.#mark('\u2014', length, 'alone');
  }

  #isOpening(): boolean {
    const before = this.#text[this.#at - 1];
    const outside = isSpace(before) || '([\u2014\u2013-"\u201c\u2018\''.includes(before ?? ' ');
    return outside && !isSpace(this.#text[this.#at + 1]);
  }

  #isClosing(): boolean {
    const after = this.#text[this.#at + 1];
    const outside = isSpace(after) || ')].,;:!?\u2026\u2014\u2013-"\u201d\u2019\''.includes(after ?? ' ');
    return outside && !isSpace(this.#text[this.#at - 1]);
  }

  /** True when a word ends at `at`. */
  #isWordBefore(at: number): boolean {
    const last = this.tokens.at(-1);
    return last?.kind === 'word' && last.end === at;
  }
}

/** Where the line under the head of a table ends, such as `|---|:--|`: no dashes that a child would read. */
function ruleEnd(text: string, start: number): number | undefined {
  let end = start;
  while (end < text.length && ' \t|:-'.includes(text.charAt(end))) end++;
  const isLine = end === text.length || lineEnds.includes(text.charAt(end));
  const line = isLine ? text.slice(start, end) : '';
  return line.includes('|') && line.includes('-') ? end : undefined;
}

function isSpace(unit: string | undefined): boolean {
  return unit === undefined || /^\s$/.test(unit);
}
