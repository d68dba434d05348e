import { counted, lessonLabel } from '../review/wording.ts';
import type { Lesson, SpellingLine } from '../sequence/sequence.ts';
import type { Taught, TaughtSpelling } from '../sequence/taught.ts';
import type { Problem } from '../text/problem.ts';
import type { WordFinder } from './find-words.ts';

/** New words that a lesson opens, at least; with fewer there is hardly a story to write. */
export const fewestNewWords = 10;

/** What a lesson opens. */
export interface Opened {
  /** Its new words that are worth a writer's while, the most useful first, up to `fewestNewWords`. */
  readonly words: readonly string[];
  /** Its new spellings that no word holds which children can read by then, rare words and forms with endings among them. */
  readonly unheld: readonly SpellingLine[];
}

/**
 * What a lesson opens: the words read by its new spellings, and those it teaches whole; *zap*, *zaps* and *zapping* are one
 * word. Undefined for a lesson without a new spelling, which is there to go over what is known, to open a form or to
 * teach words whole, and is not held to any number.
 */
export function openedBy(taught: Taught, finder: WordFinder): Opened | undefined {
  if (taught.newSpellings.length === 0) return undefined;
  const { words } = finder.find(taught, { isNew: true, baseFormsOnly: true, limit: fewestNewWords });
  const held = new Set(words.flatMap(({ newSpellings }) => newSpellings));
  const unheld = taught.newSpellings.filter(
    (spelling) => !held.has(spelling) && !isHeld(spelling, taught, finder),
  );
  return {
    words: words.slice(0, fewestNewWords).map(({ word }) => word),
    unheld: unheld.map(({ line }) => line),
  };
}

function isHeld(spelling: TaughtSpelling, taught: Taught, finder: WordFinder): boolean {
  // Most key words can be read themselves, and to look at one word costs next to nothing.
  if (finder.wordAt(taught, spelling.line.keyWord)?.newSpellings.includes(spelling)) return true;
  const wanted = {
    spelling: { letters: spelling.line.letters, pattern: spelling.pattern },
    isNew: true,
    limit: 20,
  };
  return [false, true].some((includesRare) =>
    finder
      .find(taught, { ...wanted, includesRare })
      .words.some(({ newSpellings }) => newSpellings.includes(spelling)),
  );
}

/** The warnings at a lesson that opens too few words, and at its spellings that open none. */
export function leanLessonProblems(lesson: Lesson, { words, unheld }: Opened): readonly Problem[] {
  const label = lessonLabel(lesson);
  const few: Problem[] =
    words.length >= fewestNewWords
      ? []
      : [
          {
            message: `${label.charAt(0).toUpperCase()}${label.slice(1)} opens ${wordsOpened(words)}. A story needs at least ${fewestNewWords} to choose from. Teach another spelling or word with it, or move it to where more is taught.`,
            span: lesson.nameSpan,
            severity: 'warning',
          },
        ];
  const idle = lesson.spellings
    .filter(({ value }) =>
      unheld.some(({ letters, keyWord }) => value.letters === letters && value.keyWord === keyWord),
    )
    .map(
      ({ value: { letters, keyWord }, span }): Problem => ({
        message: `No word that children can read by ${label} holds ${letters} as in ${keyWord}, so no story can practise it. Move it to where the other spellings of its words are taught.`,
        span,
        severity: 'warning',
      }),
    );
  return [...few, ...idle];
}

function wordsOpened(words: readonly string[]): string {
  return words.length === 0
    ? 'no new word that children can read'
    : `only ${counted(words.length, 'new word')} that children can read: ${words.join(', ')}`;
}
