import { counted } from '../wording.ts';
import type { PageRule } from './rule.ts';

const sequence = `title: Examples
targets: { page: 6 }
lessons:
  - name: "1"
    spellings: [a as in map]
`;

/** A page has more words than the target allows. */
export const longPage: PageRule = {
  id: 'long-page',
  description: 'A page has more words than the target.',
  looksAt: 'page',
  check: ({ sentences }, { targets }) => {
    const words = sentences.flatMap((sentence) => sentence.words);
    const first = words[targets.page];
    if (first === undefined) return [];
    return [
      {
        // Only the first word too many: a longer mark would hide the marks of the words.
        span: first.span,
        message: `This page has ${counted(words.length, 'word')}; the target is at most ${targets.page}. From here on it is too long.`,
      },
    ];
  },
  documentation: {
    triggers:
      'The text beside one picture has more words than the target `page`. The finding stands on the first word past the target.',
    bad: {
      sequence,
      story: '---\nlesson: "1"\n---\nDad sat. A cat sat. A ⟦man⟧ sat.\n',
      messages: ['This page has 8 words; the target is at most 6. From here on it is too long.'],
    },
    good: {
      sequence,
      story: '---\nlesson: "1"\n---\nDad sat. A cat sat.\n\n---\n\nA man sat.\n',
      messages: [],
    },
    options: 'The target `page`, for the whole sequence or a lesson.',
    rationale:
      'Few words a page leave room for a picture that carries the meaning, and turning the page is a rest and a small success.',
  },
  examples: [
    {
      sequence,
      story:
        '---\nlesson: "1"\n---\n# A long, long, long title\n\nDad sat.\n\n> Ask: What did the cat do when it saw Dad?\n',
      messages: [],
    },
  ],
};
