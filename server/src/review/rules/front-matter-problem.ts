import type { ProblemRule } from './rule.ts';

const sequence = 'title: Examples\nlessons:\n  - name: "1"\n    spellings: [a as in map]\n';

/** Something is wrong in the front matter of a story, where the finding stands. */
export const frontMatterProblem: ProblemRule = {
  id: 'front-matter-problem',
  description: 'Something is wrong in the front matter of a story, at this place.',
  looksAt: 'problems',
  check: (problems) => problems.map(({ span, message }) => ({ span, message })),
  documentation: {
    triggers:
      'The front matter is broken YAML, has an unknown key or a value of the wrong kind, names a lesson the sequence does not have or a sequence that cannot be read, or gives a pronunciation that cannot be right. What can be used is used. What stands in the text and is not read as the child’s, such as words in indented lines or in HTML, or quotes nested without end, is told under this rule too.',
    bad: {
      sequence,
      story: '---\nlesson: "1"\npronunciations:\n  cat: c-⟦at⟧\n---\nA cat sat.\n',
      messages: [
        '“at” is no grapheme that is known; give its letters another cut, or a key word in brackets. The pronunciation is not used.',
      ],
    },
    good: {
      sequence,
      story: '---\nlesson: "1"\npronunciations:\n  cat: c-a-t\n---\nA cat sat.\n',
      messages: [],
    },
    options: 'None.',
    rationale:
      'A misspelt key is as good as none: without a word about it, the writer would wonder why the names are not known.',
  },
  examples: [],
};
