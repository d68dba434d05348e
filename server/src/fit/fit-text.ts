import type { Phonics } from '../phonics/phonics.ts';
import { reachesReadable, readableShare } from '../review/figures.ts';
import type { PlaceInSentence } from '../review/fitting-readings.ts';
import { type Counts, type ReviewedWord, type WordKind, wordKinds } from '../review/review.ts';
import { type ReviewContext, reviewContext } from '../review/review-context.ts';
import { reviewWord } from '../review/review-word.ts';
import { missingLabel } from '../review/wording.ts';
import type { Lesson } from '../sequence/sequence.ts';
import type { Teaching } from '../sequence/teaching.ts';
import type { Story, Word } from '../story/story.ts';
import { foldedWord } from '../text/folded-word.ts';
import type { Fit, HeldBack, LessonFit, MissingThing, UnreadWord } from './fit.ts';

/**
 * Reads a text at every lesson of a sequence; each different word is judged once a lesson. The figures are those of a
 * review of the text at that lesson. `phonics` is the one that `teaching` was made with.
 */
export function fitText(story: Story, teaching: Teaching, phonics: Phonics): Fit {
  const words = differentWords(story, phonics);
  const judgeAt = (lesson: Lesson): readonly JudgedWord[] => {
    const context = reviewContext(teaching.taughtBy(lesson), phonics, story.frontMatter);
    return words.map((each) => ({ ...each, reviewed: reviewWord(each.word, each.place, context) }));
  };
  const lessons = teaching.sequence.lessons.map((lesson) => lessonFit(lesson, judgeAt(lesson), teaching));
  const first = lessons.find(({ reachesTarget }) => reachesTarget);
  const lasting = lessons.find((_, index) =>
    lessons.slice(index).every(({ reachesTarget }) => reachesTarget),
  );
  return {
    words: words.reduce((sum, { count }) => sum + count, 0),
    differentWords: new Set(words.map(({ word }) => foldedWord(word.text))).size,
    lessons,
    ...(first === undefined ? {} : { first }),
    ...(lasting === undefined ? {} : { lasting }),
    heldBackAt: (lesson) => {
      const judged = judgeAt(lesson);
      const later = teaching.sequence.lessons
        .slice(lesson.index + 1)
        .map((each) => ({ lesson: each, context: contextAt(each) }));
      return heldBack(lessonFit(lesson, judged, teaching), judged, later);
    },
  };

  function contextAt(lesson: Lesson): ReviewContext {
    return reviewContext(teaching.taughtBy(lesson), phonics, story.frontMatter);
  }
}

/** A word of the text that no earlier one is like, in a place that stands for all of its kind. */
interface DifferentWord {
  readonly word: Word;
  readonly place: PlaceInSentence;
  readonly count: number;
}

interface JudgedWord extends DifferentWord {
  readonly reviewed: ReviewedWord;
}

interface LaterLesson {
  readonly lesson: Lesson;
  readonly context: ReviewContext;
}

/** Words are alike when they are written alike and, where a word has several meanings, their sentences call for the same. */
function differentWords(story: Story, { heteronyms }: Phonics): readonly DifferentWord[] {
  const found = new Map<string, { word: Word; place: PlaceInSentence; count: number }>();
  for (const { page } of story.pages) {
    for (const { words } of page.sentences) {
      const texts = words.map(({ text }) => text);
      words.forEach((word, index) => {
        const sense = heteronyms.sensesOf(word.text) === undefined ? 0 : heteronyms.choose(texts, index);
        const key = `${word.form} ${sense} ${word.text}`;
        const known = found.get(key);
        if (known === undefined) found.set(key, { word, place: { words, index }, count: 1 });
        else known.count++;
      });
    }
  }
  return [...found.values()];
}

function lessonFit(lesson: Lesson, judged: readonly JudgedWord[], teaching: Teaching): LessonFit {
  const byKind = new Map<WordKind, number>();
  let words = 0;
  for (const { reviewed, count } of judged) {
    byKind.set(reviewed.kind, (byKind.get(reviewed.kind) ?? 0) + count);
    words += count;
  }
  const counts: Counts = {
    ...(Object.fromEntries(wordKinds.map((kind) => [kind, byKind.get(kind) ?? 0])) as Record<
      WordKind,
      number
    >),
    words,
  };
  const { readable } = teaching.taughtBy(lesson).targets;
  return {
    lesson,
    counts,
    readable: readableShare(counts),
    target: readable / 100,
    reachesTarget: reachesReadable(counts, readable),
  };
}

function heldBack(fit: LessonFit, judged: readonly JudgedWord[], later: readonly LaterLesson[]): HeldBack {
  const { words: all } = fit.counts;
  const unread = new Map<string, UnreadWord>();
  for (const { word, place, count, reviewed } of judged) {
    if (isReadable(reviewed)) continue;
    // Capitals and the meaning of a heteronym do not make two words of one for a reader of the list.
    const key = `${foldedWord(word.text)} ${reviewed.missing.map(missingLabel).join(', ')}`;
    const known = unread.get(key);
    const total = (known?.count ?? 0) + count;
    const lesson =
      known === undefined
        ? later.find(({ context }) => isReadable(reviewWord(word, place, context)))?.lesson
        : known.lesson;
    unread.set(key, {
      text: known?.text ?? word.text,
      count: total,
      rise: total / all,
      reviewed: known?.reviewed ?? reviewed,
      ...(lesson === undefined ? {} : { lesson }),
    });
  }
  const words = [...unread.values()].sort((left, right) => right.count - left.count);
  const isDeclared = ({ reviewed: { kind } }: UnreadWord): boolean => kind !== 'not-taught';
  return {
    fit,
    things: missingThings(words, all),
    words,
    declared: words.filter(isDeclared),
    never: words.filter((word) => word.lesson === undefined && !isDeclared(word)),
  };
}

function missingThings(words: readonly UnreadWord[], all: number): readonly MissingThing[] {
  const things = new Map<string, { missing: MissingThing['missing']; alone: number; words: UnreadWord[] }>();
  for (const word of words) {
    const labels = new Set(word.reviewed.missing.map(missingLabel));
    for (const missing of word.reviewed.missing) {
      const label = missingLabel(missing);
      const thing = things.get(label) ?? { missing, alone: 0, words: [] };
      if (!thing.words.includes(word)) thing.words.push(word);
      if (labels.size === 1) thing.alone += word.count;
      things.set(label, thing);
    }
  }
  const uses = (thing: { words: readonly UnreadWord[] }): number =>
    thing.words.reduce((sum, { count }) => sum + count, 0);
  return [...things.values()]
    .map((thing) => ({ ...thing, rise: thing.alone / all }))
    .sort((left, right) => right.alone - left.alone || uses(right) - uses(left));
}

function isReadable({ kind }: ReviewedWord): boolean {
  return kind === 'decodable' || kind === 'high-frequency';
}
