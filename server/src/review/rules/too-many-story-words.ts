import { foldedWord } from '../../text/folded-word.ts';
import { counted } from '../wording.ts';
import type { StoryRule } from './rule.ts';

const sequence = `title: Examples
targets: { story words: 1 }
lessons:
  - name: "1"
    spellings: [a as in map]
`;

/** The front matter declares more different story words than the target allows. */
export const tooManyStoryWords: StoryRule = {
  id: 'too-many-story-words',
  description: 'More story words are declared than the target allows.',
  looksAt: 'story',
  check: ({ story, taught }) => {
    const most = taught.targets.storyWords;
    const firsts = new Map(
      story.frontMatter.storyWords.map((word) => [foldedWord(word.word), word] as const).reverse(),
    );
    const different = [...firsts.values()].reverse();
    return different.slice(most).map(({ span }) => ({
      span,
      message: `The story declares ${counted(different.length, 'story word')}; the target is at most ${most}.`,
    }));
  },
  documentation: {
    triggers:
      'The front matter lists more different story words than the target `story words`, used in the text or not. The findings stand on the ones past the target.',
    bad: {
      sequence,
      story:
        '---\nlesson: "1"\nstory words:\n  pond: a small lake\n  ⟦reeds⟧: tall grass\n---\nA pond! Reeds!\n',
      messages: ['The story declares 2 story words; the target is at most 1.'],
    },
    good: {
      sequence,
      story: '---\nlesson: "1"\nstory words:\n  pond: a small lake\n---\nA pond! Ponds!\n',
      messages: [],
    },
    options: 'The target `story words`, for the whole sequence or a lesson.',
    rationale:
      'Each story word is said and explained before the reading. More than a few are forgotten before the first page, and the child is back to guessing.',
  },
  examples: [],
};
