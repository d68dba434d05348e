import type { StoryRule } from './rule.ts';

const sequence = `title: Examples
lessons:
  - name: "1"
    spellings: [a as in map]
`;

/** A declared story word that the text does not use. */
export const unusedStoryWord: StoryRule = {
  id: 'unused-story-word',
  description: 'A story word is declared but not used in the text.',
  looksAt: 'story',
  check: ({ story, uses }) =>
    story.frontMatter.storyWords
      .filter(({ word }) => !uses.storyWords.has(word))
      .map(({ word, span }) => ({
        span,
        message: `The story word “${word}” is not in the text; take it out of the front matter or use it.`,
      })),
  documentation: {
    triggers:
      'The front matter lists a story word that the running text has in no simple form: not the word, not its s, es or ies form, not the possessive of one of these. The title does not count as a use.',
    bad: {
      sequence,
      story: '---\nlesson: "1"\nstory words:\n  ⟦pond⟧: a small lake\n---\nA cat sat.\n',
      messages: ['The story word “pond” is not in the text; take it out of the front matter or use it.'],
    },
    good: {
      sequence,
      story: '---\nlesson: "1"\nstory words:\n  pond: a small lake\n---\nThe pond’s edge.\n',
      messages: [],
    },
    options: '`story words` in the front matter.',
    rationale:
      'A word the teacher explains and the children never meet costs attention, and is most often left over from an earlier draft.',
  },
  examples: [
    {
      sequence,
      story: '---\nlesson: "1"\nstory words:\n  cherry: a small red fruit\n---\nRed cherries!\n',
      messages: [],
    },
  ],
};
