import { codeUnits } from '../text/code-units.ts';
import { endOfLine, startOfNextLine } from '../text/lines.ts';

/**
 * Where a text of YAML goes deeper than any that is meant; undefined where it does not. The library calls itself for every
 * level, and when the stack has nearly come to its end, V8 does not throw but ends the process once it has to compile an
 * expression there. Brackets, dashes and colons in quotes and comments count too.
 *
 * @param deepest is how many lists and maps there may be, one in another; a list in the column of its key is not counted.
 */
export function placeTooDeep(text: string, deepest = 50): number | undefined {
  const nesting = new Nesting();
  for (let start = 0; start < text.length; ) {
    const end = endOfLine(text, start);
    let at = start;
    while (at < end && text.charCodeAt(at) === space) at++;
    if (at < end) nesting.beginLine(at - start);
    for (; at < end; at++) {
      const unit = text.charCodeAt(at);
      if (unit === openBracket || unit === openBrace) nesting.open();
      else if (unit === closeBracket || unit === closeBrace) nesting.close();
      else if (unit === comma) nesting.nextItem();
      else if (isMark(unit) && (at + 1 === end || isBlank(text.charCodeAt(at + 1)))) {
        nesting.mark(at + 1 - start);
      }
      if (nesting.depth > deepest) return at;
    }
    start = startOfNextLine(text, end);
  }
  return undefined;
}

const { closeBrace, closeBracket, colon, comma, hyphen, openBrace, openBracket, questionMark, space, tab } =
  codeUnits;

/** The signs of a list item, of a key and of a value, when a blank or the line's end follows. */
function isMark(unit: number): boolean {
  return unit === hyphen || unit === questionMark || unit === colon;
}

function isBlank(unit: number): boolean {
  return unit === space || unit === tab;
}

/** How deep a place is, told line by line and sign by sign. */
class Nesting {
  /** The columns of the blocks that are open. */
  readonly #columns: number[] = [];
  /** For each bracket that is open, the marks that stood in brackets before it. */
  readonly #brackets: number[] = [];
  /** Marks in brackets that are open. */
  #marks = 0;
  #indent = 0;
  /** Whether a mark of a block stands in the line so far. */
  #isInBlock = false;
  /** A line that is indented no more than this ends all brackets, as the library has it. */
  #endsBrackets = -1;

  get depth(): number {
    return this.#columns.length + this.#brackets.length + this.#marks;
  }

  beginLine(indent: number): void {
    this.#indent = indent;
    this.#isInBlock = false;
    if (indent <= this.#endsBrackets) {
      this.#brackets.length = 0;
      this.#marks = 0;
    }
    while ((this.#columns.at(-1) ?? -1) >= indent) this.#columns.pop();
    this.#columns.push(indent);
  }

  /** A bracket opens. Of one that stands behind no mark it is not sure what ends it. */
  open(): void {
    if (this.#brackets.length === 0) this.#endsBrackets = this.#isInBlock ? this.#indent : -1;
    this.#brackets.push(this.#marks);
  }

  close(): void {
    this.#marks = this.#brackets.pop() ?? 0;
  }

  /** A comma: in brackets what stood before it in the same bracket is over. */
  nextItem(): void {
    this.#marks = this.#brackets.at(-1) ?? 0;
  }

  mark(column: number): void {
    if (this.#brackets.length > 0) this.#marks++;
    else {
      this.#isInBlock = true;
      this.#columns.push(column);
    }
  }
}
