import type { ReviewedWord } from '../../server/src/review/review.ts';
import { reviewStory } from '../../server/src/review/review-story.ts';
import { readStory } from '../../server/src/story/read-story.ts';
import { packagePhonics } from './package-phonics.ts';
import { sampleLesson } from './sample-lessons.ts';

/** The words of a text as `check --lesson` sees them at a lesson of the sample sequence. */
export function reviewedAtSampleLesson(text: string, lesson: string): readonly ReviewedWord[] {
  const review = reviewStory({
    story: readStory(text),
    taught: sampleLesson(lesson),
    phonics: packagePhonics,
  });
  return review.pages.flatMap(({ reviewed }) => reviewed.words);
}
