import type { Phonics } from '../../server/src/phonics/phonics.ts';
import type { Review, ReviewedWord } from '../../server/src/review/review.ts';
import { reviewStory } from '../../server/src/review/review-story.ts';
import { readSequence } from '../../server/src/sequence/read-sequence.ts';
import { teachingOf } from '../../server/src/sequence/teaching.ts';
import { readStory } from '../../server/src/story/read-story.ts';
import { lessonsOf, type PrimerLesson, sequenceOf, storyOf, type View } from './series.ts';

/** The reviews of every lesson of the primer under one view. */
export function reviewsOf(lessons: readonly PrimerLesson[], view: View, phonics: Phonics): readonly Review[] {
  const sequence = readSequence(sequenceOf(lessons, view, phonics));
  const teaching = teachingOf(sequence, phonics);
  const problems = teaching.problems.filter(({ severity }) => severity === 'error');
  if (problems.length > 0) throw new Error(problems.map(({ message }) => message).join('\n'));
  return lessons.map((lesson) => {
    const taught = teaching.taughtAt(String(lesson.lesson));
    if (!taught) throw new Error(`The sequence has no lesson ${lesson.lesson}.`);
    return reviewStory({ story: readStory(storyOf(lesson, lessons)), taught, phonics });
  });
}

/** All running words of a review. */
export function runningWords(review: Review): readonly ReviewedWord[] {
  return review.pages.flatMap(({ reviewed }) => reviewed.words);
}

/** The report of the whole book: a table of markdown, a row a lesson, and a last row for the book. */
export function reportOf(jsonLines: string, phonics: Phonics): string {
  const lessons = lessonsOf(jsonLines);
  const bySounds = reviewsOf(lessons, 'sounds', phonics);
  const byWords = reviewsOf(lessons, 'sounds and words', phonics);
  const listedIn = new Map<string, number>();
  for (const lesson of lessons) {
    for (const word of lesson.new_words)
      if (!listedIn.has(word.toLowerCase())) listedIn.set(word.toLowerCase(), lesson.lesson);
  }
  const rows = lessons.map((lesson, index) => {
    const sounds = bySounds[index];
    const words = byWords[index];
    if (!sounds || !words) throw new Error('A lesson has no review.');
    const fallen = new Map<string, string>();
    for (const word of runningWords(words)) {
      if (word.kind === 'not-taught') fallen.set(word.word.text.toLowerCase(), whyFallen(word, listedIn));
    }
    const list = [...fallen].map(([word, why]) => `${word} (${why})`).join('; ');
    return `| ${lesson.lesson} | ${words.counts.words} | ${percent(sounds.readable)} | ${percent(words.readable)} | ${list} |`;
  });
  const total = (reviews: readonly Review[]): number => {
    const readable = reviews.reduce(
      (sum, { counts }) => sum + counts.decodable + counts['high-frequency'],
      0,
    );
    return readable / reviews.reduce((sum, { counts }) => sum + counts.words, 0);
  };
  const all = byWords.reduce((sum, { counts }) => sum + counts.words, 0);
  return [
    '| lesson | running words | readable by listed sounds | and by listed words | words that fall out of both, and why |',
    '|---|---|---|---|---|',
    ...rows,
    `| all | ${all} | ${percent(total(bySounds))} | ${percent(total(byWords))} | |`,
    '',
  ].join('\n');
}

/** A share as percent with one decimal, rounded down as everywhere. */
function percent(share: number): string {
  return `${(Math.floor(share * 1000 + 1e-9) / 10).toFixed(1)} %`;
}

function whyFallen(word: ReviewedWord, listedIn: ReadonlyMap<string, number>): string {
  const text = word.word.text.toLowerCase();
  const later = listedIn.get(text);
  if (later !== undefined) return `listed only in lesson ${later}`;
  const lacks = word.missing.map((missing) =>
    missing.kind === 'spelling'
      ? `${missing.letters}${missing.keyWord === undefined ? '' : ` as in ${missing.keyWord}`}`
      : missing.kind,
  );
  return `never listed; needs ${[...new Set(lacks)].join(', ')}`;
}
