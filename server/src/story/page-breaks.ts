import { endOfLine, startOfNextLine } from '../text/lines.ts';
import type { Span } from '../text/span.ts';

/** The most a story may hold before the rest is left unread: UTF-16 code units (about 180,000 words), and lines. */
export const mostRead = { units: 1_000_000, lines: 20_000 } as const;

/** Where a page stands; `unread` marks the rest of a text that is too long to be read. */
export interface PagePlace extends Span {
  readonly unread: boolean;
}

/** A story's body, cut up. */
export interface Cut {
  readonly pages: readonly PagePlace[];
  /** The lines that define link addresses (`[net]: art/net.png`); any page may use those of another. */
  readonly definitions: string;
}

/**
 * Cuts a story's body, from `from` on, at its page breaks: lines of three or more `-`, `*` or `_`, indented by at most
 * three spaces, even right under text (where CommonMark would make a heading of it). Breaks inside fenced code and
 * HTML comments are none. The break's own line belongs to no page; n breaks give n + 1 pages.
 */
export function cutPages(text: string, from: number): Cut {
  const pages: PagePlace[] = [];
  let definitions = '';
  let pageStart = from;
  let hidden: Hidden | undefined;
  let lines = 0;
  for (let at = from; at < text.length; ) {
    if (at - from > mostRead.units || ++lines > mostRead.lines) {
      if (at > pageStart) pages.push({ start: pageStart, end: at, unread: false });
      pages.push({ start: at, end: text.length, unread: true });
      return { pages, definitions };
    }
    const end = endOfLine(text, at);
    const next = startOfNextLine(text, end);
    if (hidden !== undefined) {
      if (closes(hidden, text, at, end)) hidden = undefined;
    } else if (!isLetter(text.charCodeAt(at))) {
      if (isBreak(text, at, end)) {
        pages.push({ start: pageStart, end: at, unread: false });
        pageStart = next;
      } else {
        if (isDefinition(text, at, end)) definitions += `${text.slice(at, end)}\n`;
        hidden = opened(text, at, end);
      }
    }
    at = next;
  }
  pages.push({ start: pageStart, end: text.length, unread: false });
  return { pages, definitions };
}

/** What hides page breaks: a code fence, until one of its kind at least as long, or a comment, until its end mark. */
type Hidden = { readonly fence: string; readonly length: number } | 'comment';

function isBreak(text: string, start: number, end: number): boolean {
  let at = afterIndent(text, start, end);
  const mark = text[at];
  if (mark !== '-' && mark !== '*' && mark !== '_') return false;
  let count = 0;
  for (; at < end; at++) {
    const unit = text[at];
    if (unit === mark) count++;
    else if (unit !== ' ' && unit !== '\t') return false;
  }
  return count >= 3;
}

/** Definitions longer than this are left to their own page. */
const longestDefinition = 1000;

function isDefinition(text: string, start: number, end: number): boolean {
  const at = afterIndent(text, start, end);
  if (text[at] !== '[' || end - at > longestDefinition) return false;
  const close = text.indexOf(']:', at);
  return close > at + 1 && close < end;
}

function opened(text: string, start: number, end: number): Hidden | undefined {
  const at = afterListMark(text, afterIndent(text, start, end), end);
  const mark = text[at];
  if (mark === '<') {
    const comment = text.startsWith('<!--', at) && !text.slice(at + 2, end).includes('-->');
    return comment ? 'comment' : undefined;
  }
  if (mark !== '`' && mark !== '~') return undefined;
  const length = runLength(text, at, end, mark);
  if (length < 3) return undefined;
  // A backtick after the fence makes the line inline code: ```like this```.
  if (mark === '`' && text.slice(at + length, end).includes('`')) return undefined;
  return { fence: mark, length };
}

function closes(hidden: Hidden, text: string, start: number, end: number): boolean {
  if (hidden === 'comment') return text.slice(start, end).includes('-->');
  let at = start;
  while (at < end && text[at] === ' ') at++;
  const length = runLength(text, at, end, hidden.fence);
  return length >= hidden.length && text.slice(at + length, end).trim() === '';
}

/** Past up to three spaces. */
function afterIndent(text: string, start: number, end: number): number {
  let at = start;
  while (at < end && at - start < 3 && text[at] === ' ') at++;
  return at;
}

/** Past one list mark (`- `, `* `, `+ `, `1. `, `1) `), so that a fence opened in a list item is seen. */
function afterListMark(text: string, start: number, end: number): number {
  let at = start;
  while (at < end && at - start < 9 && isDigit(text.charCodeAt(at))) at++;
  const marks = at > start ? '.)' : '-*+';
  const mark = text[at];
  if (at >= end || mark === undefined || !marks.includes(mark)) return start;
  at++;
  if (text[at] !== ' ') return start;
  while (at < end && text[at] === ' ') at++;
  return at;
}

function isLetter(unit: number): boolean {
  return (unit >= 65 && unit <= 90) || (unit >= 97 && unit <= 122);
}

function isDigit(unit: number): boolean {
  return unit >= 48 && unit <= 57;
}

function runLength(text: string, start: number, end: number, mark: string): number {
  let at = start;
  while (at < end && text[at] === mark) at++;
  return at - start;
}
