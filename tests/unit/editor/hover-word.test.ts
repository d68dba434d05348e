import { expect, it } from 'vitest';
import { wordBlocks } from '../../../server/src/editor/hover-word.ts';
import { reviewStory } from '../../../server/src/review/review-story.ts';
import { readSequence } from '../../../server/src/sequence/read-sequence.ts';
import { teachingOf } from '../../../server/src/sequence/teaching.ts';
import { readStory } from '../../../server/src/story/read-story.ts';
import { phonics } from '../../support/reads.ts';

it('tells what the other reading of a heteronym means', () => {
  const teaching = teachingOf(readSequence('lessons: [{ name: "1", spellings: [r as in rat] }]\n'), phonics);
  const taught = teaching.taughtAt('1');
  if (!taught) throw new Error('The sequence has no lesson 1.');
  const review = reviewStory({ story: readStory('---\nlesson: "1"\n---\nRead it.\n'), taught, phonics });
  const reviewed = review.pages[0]?.reviewed.words[0];
  if (!reviewed) throw new Error('The story has no word.');
  const context = { review, teaching, phonics, notation: 'dictionary' as const };
  const blocks = wordBlocks({ reviewed, span: reviewed.word.span }, context);
  expect(JSON.stringify(blocks)).toContain('(did read)');
});
