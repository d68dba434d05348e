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

// Soft hyphens and joiners are invisible inside a word.
const invisible = '\\u00AD\\u200B-\\u200D\\u2060\\uFEFF';
const wordShape = new RegExp(
  `[\\p{L}\\p{N}][\\p{L}\\p{M}\\p{N}${invisible}]*(?:['\u2019][\\p{L}\\p{N}][\\p{L}\\p{M}\\p{N}${invisible}]*)*`,
  'uy',
);
const numberShape = /\p{N}[\p{N}\p{L}\p{M}]*(?:[.,:/]\p{N}[\p{N}\p{L}\p{M}]*)*/uy;
const dottedShape = /\p{L}\.(?:\p{L}\.)+(?![\p{L}\p{N}])/uy;
const initialShape = /\p{Lu}\.[ \t]+(?=\p{Lu})/uy;
const letterOrDigit = /^[\p{L}\p{M}\p{N}]/u;
const anyInvisible = new RegExp(`[${invisible}]`, 'g');

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
    if (unit === ' ' || unit === '\t') this.#at++;
    else if (!this.#word(this.#at)) this.#other(unit);
    return true;
  }

  #word(from: number): boolean {
    const dotted = this.#match(dottedShape, from);
    if (dotted !== undefined) return this.#push(dotted, 'abbreviation');
    const number = this.#match(numberShape, from);
    if (number !== undefined) return this.#push(number, 'number');
    const word = this.#match(wordShape, from);
    if (word === undefined) return false;
    const stop = this.#text[from + word.length] === '.' && this.#text[from + word.length + 1] !== '.';
    if (stop && (abbreviations.has(word) || this.#isInitial(from)))
      return this.#push(`${word}.`, 'abbreviation');
    return this.#push(word, /\p{N}/u.test(word) ? 'number' : 'word');
  }

  #push(written: string, form: 'word' | 'number' | 'abbreviation'): boolean {
    const start = this.#at;
    this.#at += written.length;
    this.tokens.push({ kind: 'word', start, end: this.#at, text: written.replace(anyInvisible, ''), form });
    return true;
  }

  /** A capital with a stop before a capital, at the head of a sentence or behind an abbreviation: J. Hill, Mr. J. Hill. */
  #isInitial(from: number): boolean {
    if (this.#text[from] === 'I' || this.#match(initialShape, from) === undefined) return false;
    const before = this.tokens.at(-1);
    return before === undefined || before.kind !== 'word' || before.form === 'abbreviation';
  }

  #other(unit: string): void {
    if (unit === '\n' || unit === '\r') {
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
    const before = this.#isLetterBefore(this.#at);
    const after = this.#match(wordShape, this.#at + 1);
    if (!before && after !== undefined) {
      const clipped = elisions.has(after.toLowerCase());
      if (clipped || (unit === '\u2019' && !this.#openSingle)) {
        this.#push(unit + after, 'word');
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

  #isLetterBefore(at: number): boolean {
    const before = this.#text[at - 1];
    return (
      before !== undefined &&
      (letterOrDigit.test(before) || (this.tokens.at(-1)?.end === at && this.tokens.at(-1)?.kind === 'word'))
    );
  }

  #match(shape: RegExp, from: number): string | undefined {
    shape.lastIndex = from;
    return shape.exec(this.#text)?.[0];
  }
}

function isSpace(unit: string | undefined): boolean {
  return unit === undefined || /^\s$/.test(unit);
}
