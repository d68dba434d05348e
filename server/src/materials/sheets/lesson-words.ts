import type { Part, Reading } from '../../phonics/reading.ts';
import type { Review, ReviewedWord } from '../../review/review.ts';
import { foldedWord } from '../../text/folded-word.ts';

/** A word of the story by itself, in lower case unless it is a name, with the reading it is counted by. */
export interface LessonWord {
  readonly text: string;
  readonly reading: Reading;
}

/** The decodable words that use a new spelling, each once, in the order of the story. */
export function practiceWords(review: Review): readonly LessonWord[] {
  return distinctWords(review, ({ newSpellings }) => newSpellings.length > 0);
}

/** Words of the story that pass a test, each once, in the order of the story. */
export function distinctWords(
  review: Review,
  isWanted: (word: ReviewedWord) => boolean,
): readonly LessonWord[] {
  const names = new Set(review.story.frontMatter.names.map(({ value }) => foldedWord(value)));
  const found = new Map<string, LessonWord>();
  for (const reviewed of review.pages.flatMap((page) => page.reviewed.words)) {
    const { word, reading } = reviewed;
    const key = foldedWord(word.text);
    // The capital of a sentence's first word is the sentence's own, that of a name stays.
    const text = names.has(key) || key === 'i' ? word.text : key;
    if (reading !== undefined && isWanted(reviewed) && !found.has(key)) found.set(key, { text, reading });
  }
  return [...found.values()];
}

/** The high-frequency words of the story, each once: those of its own lesson first, then those taught last. */
export function highFrequencyWords(review: Review): readonly string[] {
  const { taught } = review;
  const found = new Map<string, { readonly text: string; readonly lesson: number }>();
  for (const { word } of review.pages.flatMap((page) => page.reviewed.words)) {
    const lesson = taught.highFrequencyLesson(word.text);
    const key = foldedWord(word.text);
    if (lesson !== undefined && !found.has(key)) {
      found.set(key, { text: key === 'i' || key.startsWith("i'") ? word.text : key, lesson: lesson.index });
    }
  }
  return [...found.values()].sort((one, other) => other.lesson - one.lesson).map(({ text }) => text);
}

/** One grapheme in the row of boxes of a word. */
export interface SoundBox {
  /** Its letters; those of a silent neighbour with it. */
  readonly letters: string;
  /** How many sounds it says, and so how many boxes it takes: at least one. */
  readonly sounds: number;
}

/** The boxes of a word: as many as it has sounds. */
export function soundBoxes({ parts }: Reading): readonly SoundBox[] {
  const boxes: SoundBox[] = [];
  let silent = '';
  for (const { letters, sounds } of inOrder(parts)) {
    const last = boxes.at(-1);
    if (sounds.length > 0) {
      boxes.push({ letters: silent + letters, sounds: sounds.length });
      silent = '';
    } else if (last === undefined) silent += letters;
    else boxes[boxes.length - 1] = { ...last, letters: last.letters + letters };
  }
  return boxes;
}

function inOrder(parts: readonly Part[]): readonly Part[] {
  return [...parts].sort((one, other) => (one.spans[0]?.[0] ?? 0) - (other.spans[0]?.[0] ?? 0));
}

/** How many sounds a row of boxes has. */
export function countOfSounds(boxes: readonly SoundBox[]): number {
  return boxes.reduce((sum, { sounds }) => sum + sounds, 0);
}
