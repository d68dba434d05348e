import type { ProblemRule } from './rule.ts';

const story = '---\nlesson: "1"\n---\nA cat sat.\n';

/** Something is wrong in the sequence file, where the finding stands. */
export const sequenceProblem: ProblemRule = {
  id: 'sequence-problem',
  description: 'Something is wrong in the sequence file, at this place.',
  looksAt: 'problems',
  check: (problems) => problems.map(({ span, message }) => ({ span, message })),
  documentation: {
    triggers:
      'A line of `sequence.yaml` cannot be used as it stands: broken YAML, an unknown key, two lessons of one name, a key word that does not hold its spelling. One bad line spoils only itself; the rest of the sequence goes on working.',
    bad: {
      sequence:
        'title: Examples\nlessons:\n  - name: "1"\n    spellings: [a as in map]\n  - name: ⟦"1"⟧\n    spellings: [o as in top]\n',
      story,
    },
    good: {
      sequence: 'title: Examples\nlessons:\n  - name: "1"\n    spellings: [a as in map]\n',
      story,
      messages: [],
    },
    options: 'None.',
    rationale:
      'Every verdict on every story rests on the sequence. A slip in it has to be seen where it was made.',
  },
  examples: [],
};
