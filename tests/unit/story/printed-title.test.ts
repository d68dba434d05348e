import { expect, test } from 'vitest';
import { readStory } from '../../../server/src/story/read-story.ts';
import { packagePhonics } from '../../support/package-phonics.ts';
import { reviewed } from '../../support/reviewed.ts';
import { smallSequence } from '../../support/small-lane.ts';

const titleWords = (text: string): readonly string[] =>
  (readStory(text).title?.words ?? []).map(({ text: word, span }) => {
    expect(text.slice(span.start, span.end)).toBe(word);
    return word;
  });

test.each([
  ['title: The Red Map', ['The', 'Red', 'Map']],
  ['title: "The Red Map!"', ['The', 'Red', 'Map']],
  ["title: 'Chapter II'", ['Chapter', 'II']],
  ['title: “A Map”', ['A', 'Map']],
  ['title: "A \\u004dap"', []],
  ['names: [Kim]', []],
])('the title of the front matter is the heading where the text has none: %s', (line, words) => {
  expect(titleWords(`---\nlesson: "1"\n${line}\n---\nThe map sat.\n`)).toEqual(words);
});

test('a heading goes before it', () => {
  const { title } = readStory('---\nlesson: "1"\ntitle: The Nap\n---\n# The Map\n\nThe map sat.\n');
  expect(title?.text).toBe('The Map');
});

test.each([
  ['title: Night\n', '', ['untaught-spelling: Night']],
  ['title: The Map\n', '# The Map\n\n', []],
  ['title: The Nap\n', '# The Map\n\n', ['front-matter-problem: The Nap']],
])('it is checked as it is printed: %j with %j', (line, heading, marks) => {
  const text = `---\nlesson: "1"\n${line}---\n${heading}The map sat.\n`;
  const { findings, passes } = reviewed(text, smallSequence, packagePhonics);
  const inTitle = findings.filter(({ rule }) => rule !== 'little-practice');
  expect(inTitle.map(({ rule, span }) => `${rule}: ${text.slice(span.start, span.end)}`)).toEqual(marks);
  expect(passes).toBe(true);
});
