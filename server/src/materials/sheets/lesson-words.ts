import type { Reading } from '../../phonics/reading.ts';
import type { Review, ReviewedWord } from '../../review/review.ts';
import type { Taught, TaughtSpelling } from '../../sequence/taught.ts';
import type { StoryWord } from '../../story/story.ts';
import { foldedWord } from '../../text/folded-word.ts';

/** A word of the story by itself, in lower case unless it is a name, with the reading it is counted by. */
export interface LessonWord {
  readonly text: string;
  readonly reading: Reading;
  readonly newSpellings: readonly TaughtSpelling[];
}

/** The decodable words that use what is new in the lesson, a spelling or a form, each once, in the order of the story. */
export function practiceWords(review: Review): readonly LessonWord[] {
  return distinctWords(review, (word) => practises(word, review.taught)).flatMap(
    ({ text, reviewed: { reading, newSpellings } }) =>
      reading === undefined ? [] : [{ text, reading, newSpellings }],
  );
}

/** Some of the practice words, at most so many, in the order of the story: each new spelling is in one of them if it can be. */
export function chosenWords(review: Review, most: number): readonly LessonWord[] {
  const words = practiceWords(review);
  const chosen = new Set(
    review.taught.newSpellings
      .flatMap((spelling) => words.find(({ newSpellings }) => newSpellings.includes(spelling)) ?? [])
      .slice(0, most),
  );
  for (const word of words) if (chosen.size < most) chosen.add(word);
  return words.filter((word) => chosen.has(word));
}

/** True for a decodable word that uses a new spelling, or an ending, blend or number of syllables that the lesson opens. */
export function practises({ kind, reading, newSpellings }: ReviewedWord, taught: Taught): boolean {
  return (
    newSpellings.length > 0 || (kind === 'decodable' && reading !== undefined && taught.usesNewForm(reading))
  );
}

/** The words that the children cannot read yet, each once, in the order of the story. */
export function wordsNotTaught(review: Review): readonly string[] {
  return distinctWords(review, ({ kind }) => kind === 'not-taught').map(({ text }) => text);
}

/** The story words that the text uses; one that it does not use needs no explaining. */
export function usedStoryWords({ story, findings }: Review): readonly StoryWord[] {
  const unused = new Set(
    findings.filter(({ rule }) => rule === 'unused-story-word').map(({ span }) => span.start),
  );
  return story.frontMatter.storyWords.filter(({ span }) => !unused.has(span.start));
}

/** Words of the story that pass a test, each once, in the order of the story. */
function distinctWords(
  review: Review,
  isWanted: (word: ReviewedWord) => boolean,
): readonly { readonly text: string; readonly reviewed: ReviewedWord }[] {
  const names = new Set(review.story.frontMatter.names.map(({ value }) => foldedWord(value)));
  const found = new Map<string, { text: string; reviewed: ReviewedWord }>();
  for (const reviewed of review.pages.flatMap((page) => page.reviewed.words)) {
    const { word } = reviewed;
    const key = foldedWord(word.text);
    // The capital of a sentence's first word is the sentence's own, that of a name stays.
    const keepsCapital = names.has(key) || key === 'i' || word.form === 'abbreviation';
    const text = keepsCapital ? word.text : key;
    if (isWanted(reviewed) && !found.has(key)) found.set(key, { text, reviewed });
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
