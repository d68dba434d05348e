import { whyNotTaught } from '../wording.ts';
import type { WordRule } from './rule.ts';

const sequence = `title: Examples
lessons:
  - name: "1"
    spellings: [a as in map, d as in dog, g as in got, i as in sit, m as in mud, n as in nap, t as in top, r as in rug]
    high-frequency words: [the]
  - name: "2"
    spellings: [igh as in light]
  - name: "3"
    high-frequency words: [said]
`;

/** A word needs a spelling that no lesson up to the story's own has taught. */
export const untaughtSpelling: WordRule = {
  id: 'untaught-spelling',
  description: 'A word needs a spelling that is not taught yet.',
  looksAt: 'word',
  check: (reviewed, { taught }) =>
    reviewed.kind === 'not-taught' && !lacksOnlyForms(reviewed.missing)
      ? whyNotTaught(reviewed, taught)
      : undefined,
  documentation: {
    triggers:
      'A word of the text or the title is neither decodable nor a high-frequency word, a name or a story word, and at least one of its spellings is not taught by the story’s lesson. Numbers in digits and abbreviations are found too, since they cannot be sounded out. The message names what is missing with its key word and the lesson that teaches it.',
    bad: {
      sequence,
      story: '---\nlesson: "1"\n---\nThe ⟦night⟧ ran.\n',
      messages: ['“night” needs igh as in light, which lesson 2 teaches.'],
    },
    good: { sequence, story: '---\nlesson: "1"\n---\nThe rat ran.\n', messages: [] },
    options:
      'No target of its own: `readable` weighs all such words together. `names` and `story words` in the front matter, and `high-frequency words` in the sequence, allow a word.',
    rationale:
      'A child who meets a spelling before it is taught has to guess, and guessing is the habit that decodable text is there to avoid. Which spelling and which lesson is what the writer needs to decide: another word, a later lesson, or a word to explain.',
  },
  examples: [
    {
      sequence,
      story: '---\nlesson: "2"\n---\nAt night ⟦12⟧ ran.\n',
      messages: [
        '“12” is written in digits, which cannot be sounded out; write it in letters, or declare it a story word.',
      ],
    },
    {
      sequence,
      story: '---\nlesson: "1"\n---\n# The ⟦Night⟧\n\nThe rat ran.\n',
      messages: ['“Night” needs igh as in light, which lesson 2 teaches.'],
    },
    {
      sequence,
      story:
        '---\nlesson: "1"\nnames: [Zed]\nstory words:\n  knight: a rider in armour\n---\nZed ran. The knights ran.\n',
      messages: [],
    },
  ],
};

/** True when the spellings are all taught and only an ending, blend or syllable count is not. */
export function lacksOnlyForms(missing: readonly { readonly kind: string }[]): boolean {
  return missing.length > 0 && missing.every(({ kind }) => kind !== 'spelling');
}
