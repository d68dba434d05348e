import type { Phonics } from '../../server/src/phonics/phonics.ts';
import type { Review, ReviewedWord } from '../../server/src/review/review.ts';
import { reviewStory } from '../../server/src/review/review-story.ts';
import { readSequence } from '../../server/src/sequence/read-sequence.ts';
import { teachingOf } from '../../server/src/sequence/teaching.ts';
import { readStory } from '../../server/src/story/read-story.ts';
import type { PrimerLesson } from './lessons.ts';
import { sequenceOf, storyOf, type View } from './series.ts';

/** The reviews of every lesson of the primer under one view. Throws when the sequence has a problem. */
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
