import type { Lesson } from '../sequence/sequence.ts';
import type { TextEdit } from './text-edit.ts';
import { withItem } from './yaml-edits.ts';

/**
 * Adds a word to the high-frequency words of a lesson; `text` is the file that the lesson was read from. Undefined where
 * that cannot be done.
 */
export function teachWord(text: string, lesson: Lesson, word: string): TextEdit | undefined {
  return withItem({ text, span: lesson.span }, 'high-frequency words', word, ['name', 'title', 'spellings']);
}
