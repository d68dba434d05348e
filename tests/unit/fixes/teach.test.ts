import { expect, test } from 'vitest';
import { teachWord } from '../../../server/src/fixes/teach.ts';
import { edited } from '../../../server/src/fixes/text-edit.ts';
import { readSequence } from '../../../server/src/sequence/read-sequence.ts';

/** A sequence after a word was given to its lesson 2. */
function taught(before: string, word = 'said'): string | null {
  const lesson = readSequence(before).lessons.find(({ name }) => name === '2');
  if (lesson === undefined) throw new Error('There is no lesson 2.');
  const edit = teachWord(before, lesson, word);
  return edit === undefined ? null : edited(before, [edit]);
}

test.each([
  [
    'lessons:\n  - name: "1"\n  - name: "2"\n    high-frequency words: [the, I] # early\n  - name: "3"\n',
    'lessons:\n  - name: "1"\n  - name: "2"\n    high-frequency words: [the, I, said] # early\n  - name: "3"\n',
  ],
  [
    'lessons:\n  - name: "2" # no words yet\n    spellings: [m as in mud]\n\n  # next\n  - name: "3"\n',
    'lessons:\n  - name: "2" # no words yet\n    spellings: [m as in mud]\n    high-frequency words: [said]\n\n  # next\n  - name: "3"\n',
  ],
  ['lessons:\n  - name: "2"\n', 'lessons:\n  - name: "2"\n    high-frequency words: [said]\n'],
  [
    'lessons:\n- name: "2"\n  targets: { page: 3 }\n  spellings:\n    - m as in mud # m\n\n- name: "3"',
    'lessons:\n- name: "2"\n  targets: { page: 3 }\n  spellings:\n    - m as in mud # m\n  high-frequency words: [said]\n\n- name: "3"',
  ],
  [
    'lessons:\n  - name: "2"\n    high-frequency words:\n      - the\n      - I # me\n    endings: [s]\n',
    'lessons:\n  - name: "2"\n    high-frequency words:\n      - the\n      - I # me\n      - said\n    endings: [s]\n',
  ],
  [
    'lessons:\n  - { name: "2", title: a }\n',
    'lessons:\n  - { name: "2", title: a, high-frequency words: [said] }\n',
  ],
  [
    'lessons:\r\n  - name: "2"\r\n    title: a\r\n  - name: "3"\r\n',
    'lessons:\r\n  - name: "2"\r\n    title: a\r\n    high-frequency words: [said]\r\n  - name: "3"\r\n',
  ],
])('%j', (before, after) => {
  expect(taught(before)).toBe(after);
  const words = readSequence(after).lessons.find(({ name }) => name === '2')?.highFrequencyWords;
  expect(words?.map(({ value }) => value)).toContain('said');
  expect(readSequence(after).problems).toHaveLength(readSequence(before).problems.length);
});

test('an apostrophe in front stands in quotation marks', () => {
  expect(taught('lessons:\n  - name: "2"\n', "'tis")).toBe(
    'lessons:\n  - name: "2"\n    high-frequency words: ["\'tis"]\n',
  );
});
