import { endOfLine, startOfNextLine } from '../text/lines.ts';
import type { Span } from '../text/span.ts';

/** The names of the keys of a story's front matter. */
export const frontMatterKeys = [
  'title',
  'lesson',
  'sequence',
  'names',
  'story words',
  'pronunciations',
] as const;
/** The name of a key of a story's front matter. */
export type FrontMatterKey = (typeof frontMatterKeys)[number];

/** Where a front matter stands in its file. */
export interface FrontMatterBlock {
  /** With its fences, without the line end behind them. */
  readonly span: Span;
  /** The lines between the fences. */
  readonly content: Span;
  /** The first line of hyphens. */
  readonly fence: Span;
  /** False when no second line of hyphens ends it; it then reaches to the first empty line. */
  readonly closed: boolean;
  /** Where the story's first page begins. */
  readonly bodyStart: number;
}

/**
 * Finds the front matter: a first line of exactly three hyphens (a byte-order mark may stand before it) and all lines
 * to the next such line. When prose comes first, behind an empty line, that next line is a page break and the front
 * matter was never closed: it then ends before the empty line. A file that merely opens with a page break has none.
 */
export function findFrontMatter(text: string): FrontMatterBlock | undefined {
  const start = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  const fenceEnd = endOfLine(text, start);
  if (!isFence(text, start, fenceEnd) || fenceEnd === text.length) return undefined;
  const fence = { start, end: fenceEnd };
  const contentStart = startOfNextLine(text, fenceEnd);
  const { closing, tail, prose, firstIsKey } = scan(text, contentStart);
  if (closing !== undefined && prose === undefined) {
    const end = endOfLine(text, closing);
    return {
      span: { start, end },
      content: { start: contentStart, end: closing },
      fence,
      closed: true,
      bodyStart: startOfNextLine(text, end),
    };
  }
  if (!firstIsKey) return undefined;
  const end = prose ?? tail ?? text.length;
  return {
    span: { start, end },
    content: { start: contentStart, end },
    fence,
    closed: false,
    bodyStart: end,
  };
}

interface Scan {
  /** The start of the closing fence. */
  readonly closing: number | undefined;
  /** Where the front matter would end by itself: the first empty line, or line that opens like markdown, after the keys. */
  readonly tail: number | undefined;
  /** The same, when prose stands behind it and none of our keys between that and the closing fence. */
  readonly prose: number | undefined;
  /** True when the first line that is not empty reads like a key. */
  readonly firstIsKey: boolean;
}

/** Longer blocks are not searched for their end: no one writes 10,000 lines of front matter. */
const mostLines = 10_000;

function scan(text: string, from: number): Scan {
  let tail: number | undefined;
  let prose: number | undefined;
  let firstIsKey: boolean | undefined;
  let lines = 0;
  for (let at = from; at < text.length && lines < mostLines; lines++) {
    const end = endOfLine(text, at);
    if (isFence(text, at, end)) return { closing: at, tail, prose, firstIsKey: firstIsKey ?? true };
    const line = text.slice(at, Math.min(end, at + 60));
    if (line.trim() === '') {
      tail ??= at;
    } else {
      firstIsKey ??= anyKey.test(line);
      if (ownKey.test(line)) prose = undefined;
      if (/^(?:!\[|>)/.test(line)) prose ??= tail ??= at;
      else if (anyKey.test(line)) tail = undefined;
      else if (tail !== undefined && isProse(line)) prose ??= tail;
      else if (/^#{1,6}[ \t]/.test(line)) tail ??= at;
    }
    at = startOfNextLine(text, end);
  }
  return { closing: undefined, tail, prose, firstIsKey: firstIsKey ?? false };
}

const anyKey = /^["']?[A-Za-z][A-Za-z _-]{0,30}["']?[ \t]*:(?:[ \t]|$)/;
const ownKey = new RegExp(`^["']?(?:${frontMatterKeys.join('|')})["']?[ \\t]*:`);

/** A line that no front matter would hold: not indented, no list item, no comment, no bracket, no key. */
function isProse(line: string): boolean {
  return !/^(?:[ \t#\]}-]|\.\.\.)/.test(line) && !anyKey.test(line);
}

function isFence(text: string, start: number, end: number): boolean {
  return text.startsWith('---', start) && end >= start + 3 && text.slice(start + 3, end).trim() === '';
}
