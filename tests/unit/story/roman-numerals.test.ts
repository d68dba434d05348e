import { expect, test } from 'vitest';
import { readStory } from '../../../server/src/story/read-story.ts';

/** The words that are numbers. */
function numbers(text: string): string {
  const { title, pages } = readStory(text);
  return [
    ...(title?.words ?? []),
    ...pages.flatMap(({ page }) => page.sentences.flatMap(({ words }) => words)),
  ]
    .filter(({ form }) => form === 'number')
    .map((word) => word.text)
    .join(' ');
}

test.each([
  ['# Chapter II', 'II'],
  ['# Chapter I', 'I'],
  ['# Part IV: The Net', 'IV'],
  ['# The Net\n\n## III', 'III'],
  ['# I', 'I'],
  ['# XXXIX.', 'XXXIX'],
  ['# The Net, Book V', 'V'],
  ['Kim read Chapter IX to Pip.', 'IX'],
  ['# I Can Run', ''],
  ['# What I Did', ''],
  ['# IIII', ''],
  ['# Mix', ''],
  ['I ran.', ''],
  ['I', ''],
  ['The Part I did was fun.', ''],
  ['Kim and X ran.', ''],
])('%j has the numerals %j', (text, expected) => {
  expect(numbers(text)).toBe(expected);
});
