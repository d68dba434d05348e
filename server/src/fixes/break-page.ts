import type { PlacedPage } from '../story/story.ts';
import { lineEndOf, type TextEdit } from './text-edit.ts';

/**
 * A page break before the sentence in which a page becomes too long, or before the next one when that is the page's first.
 * Undefined when the sentence stands in a list or when nothing would be left on one side. `at` is an offset of the file.
 */
export function breakPageAt(text: string, { page, start }: PlacedPage, at: number): TextEdit | undefined {
  const { sentences } = page;
  const found = sentences.findIndex(({ span }) => at < span.end + start);
  const sentence = sentences[Math.max(1, found)];
  if (found < 0 || sentence === undefined) return undefined;
  let from = sentence.span.start + start;
  while (from > 0 && /["“‘'(*_]/.test(text.charAt(from - 1))) from -= 1;
  const to = from;
  while (from > 0 && /[ \t]/.test(text.charAt(from - 1))) from -= 1;
  const lineStart = Math.max(text.lastIndexOf('\n', from - 1), text.lastIndexOf('\r', from - 1)) + 1;
  const before = text.slice(lineStart, from);
  if (/^\s*([-+*]|\d+[.)])\s/.test(text.slice(lineStart)) || /^\s*>/.test(before)) return undefined;
  const end = lineEndOf(text);
  const gap = before === '' ? end : end + end;
  return { span: { start: from, end: to }, text: `${gap}---${end}${end}` };
}
