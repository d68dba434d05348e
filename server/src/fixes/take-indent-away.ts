import { endOfLine, startOfNextLine } from '../text/lines.ts';
import type { TextEdit } from './text-edit.ts';

/** Takes the white space away from the head of the line that holds `at`, and of the lines below it that are indented as far. */
export function takeIndentAway(text: string, at: number): readonly TextEdit[] {
  const edits: TextEdit[] = [];
  let start = at;
  while (start > 0 && !/[\r\n]/.test(text.charAt(start - 1))) start--;
  for (; start < text.length; start = startOfNextLine(text, endOfLine(text, start))) {
    const line = text.slice(start, endOfLine(text, start));
    if (line.trim() === '') continue;
    const indent = /^(?: {0,3}\t| {4})[ \t]*/.exec(line)?.[0].length ?? 0;
    if (indent === 0) break;
    edits.push({ span: { start, end: start + indent }, text: '' });
  }
  return edits;
}
