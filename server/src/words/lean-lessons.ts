import { counted, lessonLabel } from '../review/wording.ts';
import type { Lesson } from '../sequence/sequence.ts';
import type { Taught } from '../sequence/taught.ts';
import type { Problem } from '../text/problem.ts';
import type { WordFinder } from './find-words.ts';

/** New words that a lesson opens, at least; with fewer there is hardly a story to write. */
export const fewestNewWords = 10;

/**
 * The new words of a lesson that are worth a writer's while, the most useful first, up to `fewestNewWords`: those read by
 * its new spellings and the words it teaches whole; *zap*, *zaps* and *zapping* are one word. Undefined for a lesson without a new spelling, which is there to
 * go over what is known, to open a form or to teach words whole, and is not held to any number.
 */
export function newWordsOf(taught: Taught, finder: WordFinder): readonly string[] | undefined {
  if (taught.newSpellings.length === 0) return undefined;
  const { words } = finder.find(taught, { isNew: true, baseFormsOnly: true, limit: fewestNewWords });
  return words.map(({ word }) => word);
}

/** The warning at a lesson that opens too few words; none where it opens enough. */
export function leanLessonProblem(lesson: Lesson, words: readonly string[]): Problem | undefined {
  if (words.length >= fewestNewWords) return undefined;
  const label = lessonLabel(lesson);
  const which =
    words.length === 0
      ? 'no new word that children can read'
      : `only ${counted(words.length, 'new word')} that children can read: ${words.join(', ')}`;
  return {
    message: `${label.charAt(0).toUpperCase()}${label.slice(1)} opens ${which}. A story needs at least ${fewestNewWords} to choose from. Teach another spelling or word with it, or move it to where more is taught.`,
    span: lesson.nameSpan,
    severity: 'warning',
  };
}
