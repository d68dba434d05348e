import { reachesReadable, readableShare, shownPercent, wordsShort } from '../figures.ts';
import { counted } from '../wording.ts';
import type { StoryRule } from './rule.ts';
import { wholeTextSpan } from './whole-text-span.ts';

const sequence = `title: Examples
targets: { readable: 75 }
lessons:
  - name: "1"
    spellings: [a as in map, c as in cat, d as in dog, n as in nap, s as in sun, t as in top]
    high-frequency words: [a]
`;

/** The readable share of the whole text is under the target. */
export const underTarget: StoryRule = {
  id: 'under-target',
  description: 'The readable share of the whole text is under the target.',
  looksAt: 'story',
  check: ({ story, taught, counts }) => {
    const target = taught.targets.readable;
    if (reachesReadable(counts, target)) return [];
    const share = shownPercent(readableShare(counts));
    const short = counted(wordsShort(counts, target), 'more word');
    return [
      {
        span: wholeTextSpan(story),
        message: `${share} % of the words are readable; the target is at least ${target} %. Of the ${counted(counts.words, 'word')}, ${short} would have to be readable.`,
      },
    ];
  },
  documentation: {
    triggers:
      'Of all running words, fewer than the target `readable` (percent) are decodable or high-frequency words. Names and story words count among the running words but not as readable. The shares are compared exactly and shown with one decimal, rounded down. The finding stands on the lesson in the front matter.',
    bad: {
      sequence,
      story: '---\nlesson: ⟦"1"⟧\n---\nA cat sat. A fish swam.\n',
      messages: [
        '66.6 % of the words are readable; the target is at least 75 %. Of the 6 words, 1 more word would have to be readable.',
      ],
    },
    good: { sequence, story: '---\nlesson: "1"\n---\nA cat sat. A cat swam.\n', messages: [] },
    options: 'The target `readable`, for the whole sequence or a lesson.',
    rationale:
      'One hard word on a page can be helped over; one in every sentence makes the child give up sounding out. The share of readable words is the lesson-to-text match of the reading research.',
  },
  examples: [
    { sequence, story: '---\nlesson: "1"\n---\nA cat fish sat.\n', messages: [] },
    {
      sequence,
      story: '---\nlesson: ⟦"1"⟧\nnames: [Wendy]\n---\nA cat. Wendy! Wendy!\n',
      messages: [
        '50.0 % of the words are readable; the target is at least 75 %. Of the 4 words, 1 more word would have to be readable.',
      ],
    },
  ],
};
