import { describe, expect, it } from 'vitest';
import { counted, lessonLabel, listed, missingLabel } from '../../../server/src/review/wording.ts';
import type { Lesson } from '../../../server/src/sequence/sequence.ts';
import { pondPhonics } from '../../support/pond-phonics.ts';
import { reviewed } from '../../support/reviewed.ts';

describe('why a word cannot be read', () => {
  const sequence = `title: Examples
lessons:
  - name: "1"
    spellings: [t as in top, n as in net]
    endings: []
  - name: "2"
    spellings: [igh as in light, a as in map]
    high-frequency words: [knee]
  - name: Unit 3 b
    spellings: [r as in rug]
`;
  it.each([
    ['night', '“night” needs igh as in light, which lesson 2 teaches.'],
    [
      'sat',
      '“sat” needs s as it sounds here, which no lesson teaches, and a as in map, which lesson 2 teaches.',
    ],
    [
      'nap',
      '“nap” needs a as in map, which lesson 2 teaches, and p as it sounds here, which no lesson teaches.',
    ],
    [
      'red',
      '“red” needs r as in rug, which lesson “Unit 3 b” teaches, and e as it sounds here and d as it sounds here, which no lesson teaches.',
    ],
    [
      'knee',
      '“knee” needs kn as it sounds here and ee as it sounds here, which no lesson teaches. As a whole word, lesson 2 teaches it.',
    ],
    [
      '4',
      '“4” is written in digits, which cannot be sounded out; write it in letters, or declare it a story word.',
    ],
    [
      'b',
      '“b” is a single letter, which is read by its name; a lesson can teach it as a high-frequency word, or the story declare it a story word.',
    ],
    [
      'Shh',
      '“Shh” has no vowel letter, so it cannot be sounded out like a word; a lesson can teach it as a high-frequency word, or the story declare it a story word.',
    ],
    [
      'II',
      '“II” is written as a Roman numeral, which cannot be sounded out; write it in letters, or declare it a story word.',
    ],
    [
      'Mr.',
      '“Mr.” is an abbreviation, which cannot be sounded out; a lesson can teach it as a high-frequency word, or the story declare it with a name, as in names: [Mr. Plim].',
    ],
    ['the', '“the” needs th as it sounds here and a weak e, which no lesson teaches.'],
  ])('%s: %s', (word, message) => {
    const text = word === 'II' ? `# Part ${word}` : word;
    const { findings } = reviewed(`---\nlesson: "1"\n---\n${text}\n`, sequence, pondPhonics);
    expect(findings.filter(({ rule }) => rule === 'untaught-spelling').at(-1)?.message).toBe(message);
  });
});

it('a short form is named as one, not by a word that has it', () => {
  const part = { letters: "'t", sounds: ['T'], spans: [[3, 5]] } as const;
  const missing = { kind: 'spelling', letters: "'t", sounds: ['T'], keyWord: "don't", part } as const;
  expect(missingLabel(missing)).toBe("the short form 't");
});

describe('the small words of messages', () => {
  it.each([
    ['21', 'lesson 21'],
    ['3.2', 'lesson 3.2'],
    ['Unit 3 b', 'lesson “Unit 3 b”'],
    ['Lesson 4', '“Lesson 4”'],
  ])('a lesson named %s is called %s', (name, label) => {
    const span = { start: 0, end: 0 };
    const lesson: Lesson = {
      name,
      index: 0,
      spellings: [],
      highFrequencyWords: [],
      endings: [],
      blends: [],
      punctuation: [],
      targets: {},
      nameSpan: span,
      span,
    };
    expect(lessonLabel(lesson)).toBe(label);
  });

  it.each([
    [[], ''],
    [['a'], 'a'],
    [['a', 'b'], 'a and b'],
    [['a', 'b', 'c'], 'a, b and c'],
    [['a, x', 'b, y'], 'a, x, and b, y'],
  ])('%j is listed as “%s”', (items, text) => {
    expect(listed(items)).toBe(text);
  });

  it('counts', () => {
    expect([counted(1, 'word'), counted(2, 'word'), counted(0, 'story', 'stories')]).toEqual([
      '1 word',
      '2 words',
      '0 stories',
    ]);
  });
});
