import { whyNotTaught } from '../wording.ts';
import type { WordRule } from './rule.ts';
import { lacksOnlyForms } from './untaught-spelling.ts';

const sequence = `title: Examples
lessons:
  - name: "1"
    spellings: [a as in map, e as in ten, d as in dog, i as in sit, m as in mud, n as in nap, p as in pan, s as in sun, t as in top, k as in kid]
    high-frequency words: [a]
    syllables: 1
  - name: "2"
    endings: [s]
  - name: "3"
    blends: [start, end]
  - name: "4"
    syllables: 2
`;

/** The spellings of a word are taught; its ending, blend or number of syllables is not opened yet. */
export const untaughtForm: WordRule = {
  id: 'untaught-form',
  description: 'The spellings of a word are taught, but its ending, blend or number of syllables is not.',
  looksAt: 'word',
  check: (reviewed, { taught }) =>
    reviewed.kind === 'not-taught' && lacksOnlyForms(reviewed.missing)
      ? whyNotTaught(reviewed, taught)
      : undefined,
  documentation: {
    triggers:
      'A word has only taught spellings, but an ending, a consonant blend or more syllables than the lessons so far have opened. A sequence that never mentions one of these is not checked for it.',
    bad: {
      sequence,
      story: '---\nlesson: "1"\n---\nDad ⟦naps⟧.\n',
      messages: ['“naps” needs the ending s, which lesson 2 opens.'],
    },
    good: { sequence, story: '---\nlesson: "2"\n---\nDad naps.\n', messages: [] },
    options:
      'No target of its own: `readable` weighs all such words together. `endings`, `blends` and `syllables` of the lessons open the forms.',
    rationale:
      'Knowing the sounds is not yet knowing how to join three of them at a word’s end, or how to divide a word in two. Many sequences teach these steps one by one, and a text that runs ahead is as hard as one with new letters.',
  },
  examples: [
    {
      sequence,
      story: '---\nlesson: "2"\n---\nDad ⟦stands⟧.\n',
      messages: [
        '“stands” needs the blend st at its start and the blend nd at its end, which lesson 3 opens.',
      ],
    },
    {
      sequence,
      story: '---\nlesson: "3"\n---\nDad pats a ⟦napkin⟧.\n',
      messages: ['“napkin” needs words of 2 syllables, which lesson 4 opens.'],
    },
  ],
};
