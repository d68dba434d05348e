import type { Phonics } from '../../server/src/phonics/phonics.ts';
import { reviewStory } from '../../server/src/review/review-story.ts';
import { readSequence } from '../../server/src/sequence/read-sequence.ts';
import { type Teaching, teachingOf } from '../../server/src/sequence/teaching.ts';
import { coverSeries } from '../../server/src/series/cover-series.ts';
import type { Series } from '../../server/src/series/series.ts';
import { storyCoverage } from '../../server/src/series/story-coverage.ts';
import { readStory } from '../../server/src/story/read-story.ts';

/** The series of stories, given by their paths as texts, along a sequence. */
export function seriesOf(
  sequence: string,
  stories: Readonly<Record<string, string>>,
  phonics: Phonics,
): Series {
  return seriesAlong(teachingOf(readSequence(sequence), phonics), stories, phonics);
}

/** The same along a sequence that has been read. */
export function seriesAlong(
  teaching: Teaching,
  stories: Readonly<Record<string, string>>,
  phonics: Phonics,
): Series {
  const covered = Object.entries(stories).map(([path, text]) => {
    const story = readStory(text);
    const taught = teaching.taughtAt(story.frontMatter.lesson?.value ?? '');
    if (taught === undefined) throw new Error(`${path} has no lesson of the sequence.`);
    return storyCoverage(path, reviewStory({ story, taught, phonics }), phonics.words);
  });
  return coverSeries(covered, teaching);
}
