import { counted } from '../wording.ts';
import type { StoryRule } from './rule.ts';
import { wholeTextSpan } from './whole-text-span.ts';

const sequence = `title: Examples
targets: { repeats: 2 }
lessons:
  - name: "1"
    spellings: [a as in map]
    high-frequency words: [the, I]
  - name: "2"
    spellings: [o as in top]
`;

/** A new high-frequency word of the lesson is absent or appears too seldom. */
export const missingHighFrequencyWord: StoryRule = {
  id: 'missing-high-frequency-word',
  description: 'A new high-frequency word of the lesson is absent, or appears too seldom.',
  looksAt: 'story',
  check: ({ story, taught, uses }) =>
    taught.newHighFrequencyWords.flatMap((word, index) => {
      const times = uses.newWords[index] ?? 0;
      if (times >= taught.targets.repeats) return [];
      const found = times === 0 ? 'is not in the text' : `is in the text ${counted(times, 'time')}`;
      const wanted = `the target is at least ${taught.targets.repeats}`;
      return [
        {
          span: wholeTextSpan(story),
          message: `The new high-frequency word “${word}” ${found}; ${wanted}.`,
        },
      ];
    }),
  documentation: {
    triggers:
      'A word that the story’s own lesson teaches as a whole stands in the running text less often than the target `repeats`. The finding stands on the lesson in the front matter, one for each word.',
    bad: {
      sequence,
      story: '---\nlesson: ⟦"1"⟧\n---\nThe man sat. The cat sat. I sat.\n',
      messages: ['The new high-frequency word “I” is in the text 1 time; the target is at least 2.'],
    },
    good: {
      sequence,
      story: '---\nlesson: "1"\n---\nThe man and I sat. The cat and I sat.\n',
      messages: [],
    },
    options: 'The target `repeats`, for the whole sequence or a lesson; 0 asks for none.',
    rationale:
      'A word taught as a whole is kept only by meeting it again, and the text of its own lesson is where the meetings are planned.',
  },
  examples: [
    {
      sequence,
      story:
        '---\nlesson: ⟦"1"⟧\n---\n# I and the cat\n\n> I and the cat: read it to the children.\n\nThe cat sat. The cat ran.\n',
      messages: ['The new high-frequency word “I” is not in the text; the target is at least 2.'],
    },
    { sequence, story: '---\nlesson: "2"\n---\nA dog sat.\n', messages: [] },
  ],
};
