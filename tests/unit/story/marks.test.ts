import { expect, test } from 'vitest';
import { readStory } from '../../../server/src/story/read-story.ts';

function marks(text: string): string {
  return readStory(text)
    .pages.flatMap(({ page }) => page.marks.map(({ mark }) => mark))
    .join(' ');
}

test.each([
  ['the ends of sentences', 'Kim ran. Pip! What? So…', '. ! ? …'],
  ['three stops are an ellipsis', 'So... yes....', '… …'],
  ['inside a sentence', 'Kim, Pip; Ann: (Bob) [Tod]', ', ; : ( ) [ ]'],
  ['curly quotation marks by their straight form', '“Kim” ‘Pip’ «Ann» „Bob”', '" " \' \' " " " "'],
  ['straight quotation marks', '"Kim" \'Pip\'', '" " \' \''],
  ['dashes', 'Kim — Pip – Ann -- Bob - Tod', '— — — —'],
  ['no mark inside words', "don't well-known Kim’s ’til", ''],
  ['no mark behind a plural', 'the dogs’ beds', ''],
  ['no mark in abbreviations and numbers', 'Mr. Hill has 1,000 at 7 a.m.', ''],
  ['marks of the title', '# Go!\n\nKim ran.', '! .'],
  ['no marks of notes, code and markup', '> Ask: why?\n\n*Kim* `a!` [Pip](a.md)\n\n- Ann', ''],
  ['no dashes under the head of a table', '| Kim | Pip! |\n|:---|---:|\n| Ann | Bob. |\n\n--- | ---', '! .'],
  ['a dash in a line with a stroke', 'Kim -- Pip | Ann', '—'],
  ['escapes and references', 'Kim\\! Pip&quot;', '! "'],
])('%s', (_, text, expected) => {
  expect(marks(text)).toBe(expected);
});

test('a mark stands at its place', () => {
  const text = 'Kim... “Go\\!”';
  const spans = readStory(text).pages.flatMap(({ page }) => page.marks.map(({ span }) => span));
  expect(spans.map(({ start, end }) => text.slice(start, end))).toEqual(['...', '“', '\\!', '”']);
});
