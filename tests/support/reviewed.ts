import type { Phonics } from '../../server/src/phonics/phonics.ts';
import type { Review } from '../../server/src/review/review.ts';
import { reviewStory } from '../../server/src/review/review-story.ts';
import { readSequence } from '../../server/src/sequence/read-sequence.ts';
import type { Taught } from '../../server/src/sequence/taught.ts';
import { teachingOf } from '../../server/src/sequence/teaching.ts';
import { readStory } from '../../server/src/story/read-story.ts';

/** What is taught by a lesson of a sequence text. */
export function taughtAt(sequence: string, lesson: string, phonics: Phonics): Taught {
  const taught = teachingOf(readSequence(sequence), phonics).taughtAt(lesson);
  if (taught === undefined) throw new Error(`The sequence has no lesson ${lesson}.`);
  return taught;
}

/** Reviews a story text against a sequence text, as a host would. */
export function reviewed(story: string, sequence: string, phonics: Phonics): Review {
  const read = readStory(story);
  const taught = taughtAt(sequence, read.frontMatter.lesson?.value ?? '', phonics);
  return reviewStory({ story: read, taught, phonics });
}
