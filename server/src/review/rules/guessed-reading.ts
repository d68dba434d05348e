import type { WordRule } from './rule.ts';

const sequence = `title: Examples
lessons:
  - name: "1"
    spellings: [a as in map, i as in sit, b as in bat, l as in lap, m as in mud, n as in nap, p as in pan, r as in rug, s as in sun, t as in top, z as in zip]
`;

/** The word is in no list; how it sounds was worked out from its letters. */
export const guessedReading: WordRule = {
  id: 'guessed-reading',
  description: 'A word is in no list, so its sounds were worked out from its letters.',
  looksAt: 'word',
  check: ({ word, kind, reading }, { declared }) => {
    if (reading?.source !== 'rule' || (kind !== 'decodable' && kind !== 'not-taught')) return undefined;
    if (declared.isName(word.text) || declared.storyWordOf(word.text) !== undefined) return undefined;
    const cut = reading.parts.map(({ letters }) => letters).join('-');
    const first = word.text.charAt(0);
    const orName = first === first.toLowerCase() ? '' : ' declare it a name,';
    return `“${word.text}” is in no word list; its sounds were worked out from its letters (${cut}). Check the spelling,${orName} or give its graphemes under pronunciations.`;
  },
  documentation: {
    triggers:
      'A word of the text or the title is not in the lexicon, is not an ending or compound of known words and has no pronunciation by the author, so that its verdict rests on a guess. Declared names and story words are left alone.',
    bad: {
      sequence,
      story: '---\nlesson: "1"\n---\n⟦Zib⟧ sat.\n',
      messages: [
        '“Zib” is in no word list; its sounds were worked out from its letters (z-i-b). Check the spelling, declare it a name, or give its graphemes under pronunciations.',
      ],
    },
    good: { sequence, story: '---\nlesson: "1"\nnames: [Zib]\n---\nZib sat.\n', messages: [] },
    options: '`names`, `story words` and `pronunciations` in the front matter.',
    rationale:
      'Most words in no list are slips of the pen; the rest are invented, and only their inventor knows how they sound. A guess must not pass for knowledge.',
  },
  examples: [
    {
      sequence,
      story: '---\nlesson: "1"\n---\nA ⟦zib⟧ sat.\n',
      messages: [
        '“zib” is in no word list; its sounds were worked out from its letters (z-i-b). Check the spelling, or give its graphemes under pronunciations.',
      ],
    },
    {
      sequence,
      story: '---\nlesson: "1"\npronunciations:\n  zib: z-i-b\n---\nZib sat.\n',
      messages: [],
    },
  ],
};
