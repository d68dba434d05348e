import { endOfLine, startOfNextLine } from '../text/lines.ts';
import type { Span } from '../text/span.ts';
import type { TextEdit } from './text-edit.ts';

/**
 * Takes a key of the front matter out with its value, when both stand on one line of their own. `key` is the key's place
 * in the file. Undefined when the value goes on in lines below, or the key is not the first thing on its line.
 */
export function removeKey(text: string, key: Span): TextEdit | undefined {
  const isFirst = key.start > 0 && /[\r\n]/.test(text.charAt(key.start - 1));
  const next = startOfNextLine(text, endOfLine(text, key.end));
  if (!isFirst || text.charAt(key.end) !== ':' || /^[ \t]|^- /.test(text.slice(next))) return undefined;
  return { span: { start: key.start, end: next }, text: '' };
}
