/** A lesson of the primer as `lessons.jsonl` has it. */
export interface PrimerLesson {
  readonly lesson: number;
  readonly heading: string;
  /** Words the book lists above the lesson's text, as printed. */
  readonly new_words: readonly string[];
  /** Letters whose sound the book lists as new; the same letter comes again for another of its sounds. */
  readonly new_sounds: readonly string[];
  /** The lesson's text, line by line; an empty line parts paragraphs. */
  readonly text: readonly string[];
}

/**
 * What the copy of the book has misread in its lists, so that the text alone shows what stood there. Hard c is printed with
 * a bar, which was taken for an e: lesson 1 lists an *e* that none of its words has and no c for *cat*, lesson 29 *ears* for
 * the *cars* of its text. Lesson 13 lists *ch*, known since lesson 9, and has only the *ck* of *ducks*; lesson 22 lists
 * *out*, which comes again in 29, for *our*; lesson 37 *skates*, which was in 26, for *slates*.
 */
export const misread: readonly {
  readonly lesson: number;
  readonly list: 'new_words' | 'new_sounds';
  readonly copied: string;
  readonly meant: string;
}[] = [
  { lesson: 1, list: 'new_sounds', copied: 'e', meant: 'c' },
  { lesson: 13, list: 'new_sounds', copied: 'ch', meant: 'ck' },
  { lesson: 22, list: 'new_words', copied: 'out', meant: 'our' },
  { lesson: 29, list: 'new_words', copied: 'ears', meant: 'cars' },
  { lesson: 37, list: 'new_words', copied: 'skates', meant: 'slates' },
];

/** Reads the lessons as copied, one a line. */
export function copiedLessons(jsonLines: string): readonly PrimerLesson[] {
  return jsonLines
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as PrimerLesson);
}

/** The lessons with what the copy has misread added to their lists; nothing copied is taken away. */
export function lessonsOf(jsonLines: string): readonly PrimerLesson[] {
  return copiedLessons(jsonLines).map((lesson) => ({
    ...lesson,
    new_words: [...lesson.new_words, ...meantFor(lesson, 'new_words')],
    new_sounds: [...lesson.new_sounds, ...meantFor(lesson, 'new_sounds')],
  }));
}

function meantFor(lesson: PrimerLesson, list: 'new_words' | 'new_sounds'): readonly string[] {
  return misread
    .filter((slip) => slip.lesson === lesson.lesson && slip.list === list)
    .map(({ meant }) => meant);
}
