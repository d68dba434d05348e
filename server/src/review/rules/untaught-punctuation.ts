import { lessonThat } from '../wording.ts';
import type { PageRule } from './rule.ts';

const sequence = `title: Examples
lessons:
  - name: "1"
    spellings: [a as in map]
    punctuation: ["."]
  - name: "2"
    punctuation: ["!"]
`;

/** A punctuation mark that no lesson up to the story's own has introduced. */
export const untaughtPunctuation: PageRule = {
  id: 'untaught-punctuation',
  description: 'A punctuation mark that no lesson so far introduces.',
  looksAt: 'page',
  check: ({ marks }, taught) =>
    marks
      .filter(({ mark }) => taught.punctuationLesson(mark) === undefined)
      .map(({ mark, span }) => ({
        span,
        message: `The mark ${mark} is not introduced yet; ${lessonThat(taught.laterPunctuationLesson(mark), 'introduces it')}.`,
      })),
  documentation: {
    triggers:
      'The text holds a mark that no lesson up to the story’s own lists under `punctuation`. A sequence that never mentions punctuation is not checked for it.',
    bad: {
      sequence,
      story: '---\nlesson: "1"\n---\nDad sat⟦!⟧ A cat sat.\n',
      messages: ['The mark ! is not introduced yet; lesson 2 introduces it.'],
    },
    good: { sequence, story: '---\nlesson: "2"\n---\nDad sat! A cat sat.\n', messages: [] },
    options: '`punctuation` of the lessons.',
    rationale:
      'A mark tells the voice what to do. Children who have not met it stop at it as at an unknown letter.',
  },
  examples: [
    {
      sequence,
      story: '---\nlesson: "2"\n---\nCan a cat nap⟦?⟧\n',
      messages: ['The mark ? is not introduced yet; no lesson introduces it.'],
    },
    {
      sequence: 'title: Examples\nlessons:\n  - name: "1"\n    spellings: [a as in map]\n',
      story: '---\nlesson: "1"\n---\nCan a cat nap? A cat can!\n',
      messages: [],
    },
  ],
};
