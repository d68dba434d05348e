import { describe, expect, it } from 'vitest';
import { declarationsOf } from '../../../server/src/review/declarations.ts';
import type { FrontMatter } from '../../../server/src/story/story.ts';

const span = { start: 0, end: 0 };
const frontMatter = (given: { names?: string[]; storyWords?: string[] }): FrontMatter => ({
  span,
  names: (given.names ?? []).map((value) => ({ value, span })),
  storyWords: (given.storyWords ?? []).map((word) => ({ word, meaning: '', span })),
  pronunciations: [],
  problems: [],
});

describe('declared names', () => {
  it.each([
    ['Kim', 'Kim', true],
    ['Kim', 'KIM', true],
    ['Kim', "Kim's", true],
    ['Kim', 'Kim’s', true],
    ['Kim', 'kim', false],
    ['Kim', 'Kims', false],
    ['James', 'James’', true],
    ['bo', 'Bo', true],
    ['Mr. Hill', 'Hill', true],
    ['Mr. Hill', 'Mr.', true],
    ['Isle of Reeds', 'of', false],
    ['Isle of Reeds', 'Reeds', true],
    ['Anna-Lee', 'Lee', true],
  ])('with %s declared, %s is a name: %s', (name, word, isName) => {
    expect(declarationsOf(frontMatter({ names: [name] })).isName(word)).toBe(isName);
  });
});

describe('declared story words', () => {
  it.each([
    ['pond', 'pond', true],
    ['pond', 'Pond', true],
    ['pond', 'ponds', true],
    ['pond', 'pond’s', true],
    ['pond', "ponds'", true],
    ['fox', 'foxes', true],
    ['cherry', 'cherries', true],
    ['pond', 'ponding', false],
    ['pond', 'pon', false],
    ['bus', 'bu', false],
    ['guinea pig', 'pigs', true],
  ])('with %s declared, %s is a story word: %s', (declared, word, isStoryWord) => {
    const found = declarationsOf(frontMatter({ storyWords: [declared] })).storyWordOf(word);
    expect(found).toBe(isStoryWord ? declared : undefined);
  });
});
