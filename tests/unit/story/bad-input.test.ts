import { expect, test } from 'vitest';
import { readStory } from '../../../server/src/story/read-story.ts';
import type { Story } from '../../../server/src/story/story.ts';

function problems(story: Story): readonly string[] {
  return [...story.frontMatter.problems, ...story.pages.flatMap(({ page }) => page.problems)].map(
    ({ message }) => message,
  );
}

function runningWords(story: Story): number {
  return story.pages.reduce(
    (sum, { page }) => sum + page.sentences.reduce((words, sentence) => words + sentence.words.length, 0),
    0,
  );
}

const many = 10_000;

/** Items of lists, each in the one above; the library took 19 seconds for 900 of them. */
function stairs(steps: number, indent: string): string {
  return Array.from({ length: steps }, (_, step) => `${indent.repeat(step)}- a`).join('\n');
}

test.each([
  ['nested quotes', '> '.repeat(many), 'nested more than'],
  ['nested lists', `${'- '.repeat(many)}a`, 'nested more than'],
  ['nested numbered lists', '1. '.repeat(many), 'nested more than'],
  ['lists indented ever deeper', stairs(900, '  '), 'nested more than'],
  ['lists indented by tabs', stairs(900, '\t'), 'nested more than'],
  ['nested emphasis', '*a _b '.repeat(many), 'more than 300 marks'],
  ['open brackets', '['.repeat(many), 'more than 300 marks'],
  ['open comments', 'a <!-- '.repeat(many), 'more than 300 marks'],
  ['references', '&amp;'.repeat(many), 'more than 300 marks'],
  ['list items', '- a\n'.repeat(many), 'more than 2000 list items'],
  ['much emphasis', `${'*a _b '.repeat(49)}\n\n`.repeat(200), 'more than 5000 marks'],
])('%s are skipped, with a problem, and the rest is read', (_, bad, message) => {
  const story = readStory(`Kim ran.\n\n${bad}\n\nPip sat.\n\n---\n\nAnn hid.`);
  expect(problems(story)).toContainEqual(expect.stringContaining(message));
  const words = story.pages.flatMap(({ page }) =>
    page.sentences.flatMap((sentence) => sentence.words.map((word) => word.text)),
  );
  expect(words.slice(0, 2)).toEqual(['Kim', 'ran']);
  expect(words.slice(-4)).toEqual(['Pip', 'sat', 'Ann', 'hid']);
});

test('a list ten deep is read', () => {
  expect(problems(readStory(stairs(10, '  ')))).toEqual([]);
});

test('a problem stands under the first line of what is skipped', () => {
  const text = `Kim.\n\n  ${'['.repeat(400)}\n[\n\nPip.`;
  const [problem] = readStory(text).pages[0]?.page.problems ?? [];
  expect(text.slice(problem?.span.start, problem?.span.end)).toBe('['.repeat(400));
});

test.each([
  ['brackets', `names: ${'['.repeat(many)}`, 'too many brackets'],
  ['dashes', `names: ${'- '.repeat(many / 2)}`, 'nested too deeply'],
  ['a long entry', `title: ${'a'.repeat(many * 3)}`, 'too long'],
  ['many entries', 'a: b\n'.repeat(2000), 'too many entries'],
  ['aliases', 'names: [&a [x, x], &b [*a, *a], [*b, *b]]', 'is not followed'],
])('front matter with %s', (_, line, message) => {
  const story = readStory(`---\nlesson: 7\n${line}\n---\nKim ran.`);
  expect(problems(story)).toContainEqual(expect.stringContaining(message));
  expect(story.frontMatter.lesson?.value).toBe('7');
  expect(runningWords(story)).toBe(2);
});

test('a long text is read up to a limit, and the place where reading stops is named', () => {
  const text = `---\nlesson: 1\n---\n${`${'Kim ran up.\n'.repeat(99)}---\n`.repeat(300)}`;
  const story = readStory(text);
  expect(problems(story)).toEqual([expect.stringContaining('from here on it is not read')]);
  expect(runningWords(story)).toBe(200 * 99 * 3);
  const last = story.pages.at(-1);
  expect((last?.start ?? 0) + (last?.page.source.length ?? 0)).toBe(text.length);
});

test('a line of 100,000 characters is read', () => {
  expect(runningWords(readStory('Kim ran. '.repeat(11_112)))).toBe(22_224);
});
