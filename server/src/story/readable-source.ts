import { endOfLine, startOfNextLine } from '../text/lines.ts';
import type { Problem } from '../text/problem.ts';

/** A page's source as it may be given to the markdown parser. */
export interface ReadableSource {
  /** As long as the page's source, with white space in place of what is skipped, so that offsets stay. */
  readonly source: string;
  /** What is skipped and why; spans of the page. */
  readonly problems: readonly Problem[];
}

/**
 * The most that a paragraph (and a page) may hold of marks that begin or end markup, a line of nested quotes and lists,
 * and a page of lines that begin a list item, heading or quote. The parser's time grows with the square of the marks in
 * a paragraph and of the list items; 10,000 lists nested in one line took it over a minute.
 */
const most = { markup: 300, pageMarkup: 5000, nesting: 20, openings: 2000 } as const;

/** Takes out of a page what would hold up the markdown parser; an ordinary page comes back as it is. */
export function readableSource(source: string): ReadableSource {
  const skipped: { readonly start: number; readonly end: number; readonly message: string }[] = [];
  let openings = 0;
  let markup = 0;
  for (let at = 0; at < source.length; ) {
    const block = readBlock(source, at, {
      openings: most.openings - openings,
      markup: most.pageMarkup - markup,
    });
    openings += block.openings;
    markup += block.markup;
    if (block.message !== undefined) skipped.push({ start: at, end: block.end, message: block.message });
    at = Math.max(block.end, at + 1);
  }
  // The parser would drop a byte-order mark and count every offset one too low.
  const start = source.charCodeAt(0) === 0xfeff ? ` ${source.slice(1)}` : source;
  let readable = skipped.length === 0 ? start : '';
  let done = 0;
  for (const { start: from, end } of skipped) {
    readable += start.slice(done, from) + start.slice(from, end).replace(/[^\r\n]/g, ' ');
    done = end;
  }
  if (skipped.length > 0) readable += start.slice(done);
  const problems = skipped.map(({ start: from, end, message }): Problem => {
    const lead = source.slice(from, end).search(/\S/);
    const first = from + Math.max(lead, 0);
    return {
      message,
      span: { start: first, end: Math.min(endOfLine(source, first), end) },
      severity: 'error',
    };
  });
  return { source: readable, problems };
}

interface Block {
  readonly end: number;
  readonly openings: number;
  readonly markup: number;
  readonly message?: string;
}

/** Looks through the lines from `start` to the next empty one. */
function readBlock(source: string, start: number, left: Pick<Block, 'openings' | 'markup'>): Block {
  let markup = 0;
  let deepest = 0;
  let openings = 0;
  let at = start;
  while (at < source.length) {
    const end = endOfLine(source, at);
    const nesting = containersAt(source, at, end);
    deepest = Math.max(deepest, nesting.depth);
    if (nesting.count > 0) openings++;
    let blank = true;
    for (let place = nesting.end; place < end; place++) {
      const unit = source.charCodeAt(place);
      if (isMarkup(unit)) markup++;
      if (unit !== 32 && unit !== 9) blank = false;
    }
    at = startOfNextLine(source, end);
    if (blank && nesting.count === 0) break;
  }
  const message = messageOf(markup, deepest, openings > left.openings, markup > left.markup);
  return message === undefined ? { end: at, openings, markup } : { end: at, openings: 0, markup: 0, message };
}

function messageOf(
  markup: number,
  deepest: number,
  tooManyOpenings: boolean,
  tooMuchMarkup: boolean,
): string | undefined {
  if (deepest > most.nesting) {
    return `This paragraph is skipped: quotes and lists are nested more than ${most.nesting} deep.`;
  }
  if (markup > most.markup) {
    return `This paragraph is skipped: it holds more than ${most.markup} marks such as * _ [ ] < and \`.`;
  }
  if (tooManyOpenings) {
    return `This part is skipped: the page has more than ${most.openings} list items, headings and quotes.`;
  }
  if (tooMuchMarkup) {
    return `This part is skipped: the page holds more than ${most.pageMarkup} marks such as * _ [ ] < and \`.`;
  }
  return undefined;
}

/**
 * The marks of quotes, list items and headings at the head of a line: how many, where they end, and how deep they may go. An
 * item in lists of lines above is indented by two columns at least for each of them.
 */
function containersAt(
  source: string,
  start: number,
  end: number,
): { readonly count: number; readonly depth: number; readonly end: number } {
  let count = 0;
  let at = start;
  let above = 0;
  for (let unit = source.charCodeAt(at); at < end && (unit === 32 || unit === 9); ) {
    above += unit === 9 ? 2 : 0.5;
    unit = source.charCodeAt(++at);
  }
  while (at < end) {
    const unit = source.charCodeAt(at);
    if (unit === 32 || unit === 9) {
      at++;
    } else if (unit === 62 || unit === 35) {
      count++;
      at++;
    } else {
      // Most lines begin with a letter, for which no expression need be tried.
      if (unit > 57) break;
      const mark = /[-*+][ \t]|\d{1,9}[.)][ \t]/y;
      mark.lastIndex = at;
      const found = mark.exec(source);
      if (found === null) break;
      count++;
      at += found[0].length;
    }
  }
  return { count, depth: count === 0 ? 0 : count + Math.floor(above), end: Math.min(at, end) };
}

/** `*`, `_`, `[`, `]`, `<`, `&`, `\` and the backtick. */
function isMarkup(unit: number): boolean {
  return (
    unit === 42 ||
    unit === 95 ||
    unit === 91 ||
    unit === 92 ||
    unit === 93 ||
    unit === 60 ||
    unit === 38 ||
    unit === 96
  );
}
