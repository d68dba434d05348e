import { counted } from '../wording.ts';
import type { PageRule } from './rule.ts';

const sequence = `title: Examples
targets: { sentence: 4 }
lessons:
  - name: "1"
    spellings: [a as in map]
  - name: "2"
    targets: { sentence: 6 }
`;

/** A sentence has more words than the target allows. */
export const longSentence: PageRule = {
  id: 'long-sentence',
  description: 'A sentence is longer than the target.',
  looksAt: 'page',
  check: ({ sentences }, { targets }) =>
    sentences
      .filter(({ words }) => words.length > targets.sentence)
      .map(({ span, words }) => ({
        // Only the first word too many: a mark under the whole sentence would hide the marks of its words.
        span: words[targets.sentence]?.span ?? span,
        message: `This sentence has ${counted(words.length, 'word')}; the target is at most ${targets.sentence}. From here on it is too long.`,
      })),
  documentation: {
    triggers:
      'A sentence of the child’s text has more words than the target `sentence`. Parts of a hyphenated word count one each.',
    bad: {
      sequence,
      story: '---\nlesson: "1"\n---\nDad sat. Dad and a cat ⟦sat⟧.\n',
      messages: ['This sentence has 5 words; the target is at most 4. From here on it is too long.'],
    },
    good: { sequence, story: '---\nlesson: "1"\n---\nDad sat. A cat sat.\n', messages: [] },
    options: 'The target `sentence`, for the whole sequence or a lesson.',
    rationale:
      'A beginner spends all attention on the words and loses the start of a long sentence before reaching its end.',
  },
  examples: [
    {
      sequence,
      story: '---\nlesson: "2"\n---\nDad and a cat sat.\n\n---\n\nCan a tan cat nap on ⟦Dad⟧? A man sat.\n',
      messages: ['This sentence has 7 words; the target is at most 6. From here on it is too long.'],
    },
  ],
};
