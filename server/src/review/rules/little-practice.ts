import { counted, listed } from '../wording.ts';
import type { Found, StoryFigures, StoryRule } from './rule.ts';
import { wholeTextSpan } from './whole-text-span.ts';

const sequence = `title: Examples
targets: { practice: 3 }
lessons:
  - name: "1"
    spellings: [a as in map, o as in top, c as in cat, d as in dog, g as in got, n as in nap, s as in sun, t as in top]
    high-frequency words: [a]
  - name: "2"
    spellings: [sh as in ship, i as in sit]
  - name: "3"
    high-frequency words: [the]
`;

/** Too few words use the lesson's new spellings, or one of them is never used. */
export const littlePractice: StoryRule = {
  id: 'little-practice',
  description: 'Too few words use the new spellings of the lesson, or one of them is never used.',
  looksAt: 'story',
  check: (figures) => {
    const { taught } = figures;
    if (taught.newSpellings.length === 0 || taught.targets.practice === 0) return [];
    return [...tooFew(figures), ...neverUsed(figures)];
  },
  documentation: {
    triggers:
      'Fewer decodable words of the running text than the target `practice` use a spelling that the story’s own lesson teaches, or some of these spellings are in no decodable word. The findings stand on the lesson in the front matter.',
    bad: {
      sequence,
      story: '---\nlesson: ⟦"2"⟧\n---\nA dog sat in sand. It got a cod.\n',
      messages: [
        'Only 2 words use a new spelling of the lesson; the target is at least 3.',
        'The new spelling sh as in ship is in no word the children can read.',
      ],
    },
    good: { sequence, story: '---\nlesson: "2"\n---\nA dish sat in sand. A dog sat in it.\n', messages: [] },
    options: 'The target `practice`, for the whole sequence or a lesson; 0 asks for none.',
    rationale:
      'A text for a lesson is there to practise what the lesson teaches. One or two words are too few for a spelling to become quick.',
  },
  examples: [
    { sequence, story: '---\nlesson: "3"\n---\nThe dog sat.\n', messages: [] },
    {
      sequence,
      story: '---\nlesson: ⟦"2"⟧\n---\nA dog sat.\n',
      messages: ['No word uses a new spelling of the lesson; the target is at least 3.'],
    },
  ],
};

function tooFew({ story, taught, uses }: StoryFigures): readonly Found[] {
  if (uses.practice >= taught.targets.practice) return [];
  const used = uses.practice === 0 ? 'No word uses' : `Only ${counted(uses.practice, 'word')} use`;
  const verb = uses.practice === 1 ? `${used}s` : used;
  const message = `${verb} a new spelling of the lesson; the target is at least ${taught.targets.practice}.`;
  return [{ span: wholeTextSpan(story), message }];
}

function neverUsed({ story, taught, uses }: StoryFigures): readonly Found[] {
  const unused = taught.newSpellings.filter((_, index) => (uses.newSpellings[index] ?? 0) === 0);
  if (unused.length === 0 || uses.practice === 0) return [];
  const named = listed(unused.map(({ line }) => `${line.letters} as in ${line.keyWord}`));
  const are = unused.length === 1 ? `spelling ${named} is` : `spellings ${named} are`;
  return [{ span: wholeTextSpan(story), message: `The new ${are} in no word the children can read.` }];
}
