import { describe, expect, test } from 'vitest';
import { declareName, declareStoryWord, removeStoryWord } from '../../../server/src/fixes/declare.ts';
import { edited } from '../../../server/src/fixes/text-edit.ts';
import { readStory } from '../../../server/src/story/read-story.ts';

const body = '---\nKim sat.\n';

/** The front matter after a word was declared; `null` where nothing is offered. */
function front(before: string, declare: 'name' | 'story word' | 'remove', word: string): string | null {
  const text = `---\n${before}\n${body}`;
  const story = readStory(text);
  const known = story.frontMatter.storyWords.find((each) => each.word === word);
  const edit =
    declare === 'name'
      ? declareName(story, word)
      : declare === 'story word'
        ? declareStoryWord(story, word)
        : known && removeStoryWord(story, known);
  if (edit === undefined) return null;
  const after = edited(text, [edit]);
  expect(after.startsWith('---\n') && after.endsWith(`\n${body}`)).toBe(true);
  return after.slice(4, -body.length - 1);
}

describe('a name is declared', () => {
  test.each([
    ['lesson: "3"', 'lesson: "3"\nnames: [Zib]'],
    ['lesson: "3"\nnames: [Kim]', 'lesson: "3"\nnames: [Kim, Zib]'],
    ['lesson: "3"\nnames: [Kim] # the girl', 'lesson: "3"\nnames: [Kim, Zib] # the girl'],
    ['lesson: "3"\nnames: [ Kim, ]', 'lesson: "3"\nnames: [ Kim, Zib ]'],
    ['lesson: "3"\nnames: []', 'lesson: "3"\nnames: [Zib]'],
    ['lesson: "3"\nnames: Kim', 'lesson: "3"\nnames: [Kim, Zib]'],
    ['lesson: "3"\nnames: # who?', 'lesson: "3"\nnames: [Zib] # who?'],
    ['lesson: "3"\nnames:\n  - Kim # a girl\n# end', 'lesson: "3"\nnames:\n  - Kim # a girl\n  - Zib\n# end'],
    [
      'lesson: "3"\nnames:\n- Kim\nstory words:\n  pond: x',
      'lesson: "3"\nnames:\n- Kim\n- Zib\nstory words:\n  pond: x',
    ],
    ['names: [\n  Kim,\n  Tam,\n]\nlesson: "3"', 'names: [\n  Kim,\n  Tam,\n  Zib,\n]\nlesson: "3"'],
    [
      'names: [\n  Kim,\n  Tam # a boy\n]\nlesson: "3"',
      'names: [\n  Kim,\n  Tam,\n  Zib # a boy\n]\nlesson: "3"',
    ],
    [
      '# ours\ntitle: A\nlesson: "3" # soon\nstory words:\n  pond: x',
      '# ours\ntitle: A\nlesson: "3" # soon\nnames: [Zib]\nstory words:\n  pond: x',
    ],
  ])('%j', (before, after) => {
    expect(front(before, 'name', 'Zib')).toBe(after);
  });

  test('one that is there is not added', () => {
    expect(front('lesson: "3"\nnames: [Zib]', 'name', 'Zib')).toBeNull();
  });
});

describe('a story word is declared, its meaning still to be written', () => {
  test.each([
    ['lesson: "3"', 'lesson: "3"\nstory words:\n  yarn:'],
    [
      'lesson: "3"\nstory words:\n  pond: a lake # small',
      'lesson: "3"\nstory words:\n  pond: a lake # small\n  yarn:',
    ],
    [
      'story words:\n    pond: a lake\n\n# then\nlesson: "3"',
      'story words:\n    pond: a lake\n    yarn:\n\n# then\nlesson: "3"',
    ],
    ['lesson: "3"\nstory words: {pond: a lake}', 'lesson: "3"\nstory words: {pond: a lake, yarn: ""}'],
    ['lesson: "3"\nstory words: [pond]', 'lesson: "3"\nstory words: [pond, yarn]'],
    ['lesson: "3"\nstory words:', 'lesson: "3"\nstory words:\n  yarn:'],
    ['lesson: "3"\nstory words:\n  pond:', 'lesson: "3"\nstory words:\n  pond:\n  yarn:'],
    [
      'lesson: "3"\nstory words:\n  pond: >-\n    a lake\n    or so\nnames: [Kim]',
      'lesson: "3"\nstory words:\n  pond: >-\n    a lake\n    or so\n  yarn:\nnames: [Kim]',
    ],
  ])('%j', (before, after) => {
    expect(front(before, 'story word', 'yarn')).toBe(after);
    expect(readStory(`---\n${after}\n${body}`).frontMatter.storyWords.map(({ word }) => word)).toContain(
      'yarn',
    );
  });

  test('a number stands in quotation marks', () => {
    expect(front('lesson: "3"', 'story word', '12')).toBe('lesson: "3"\nstory words:\n  "12":');
  });

  test('nothing is written into a front matter that cannot be read', () => {
    expect(front('lesson: "3"\nnames: [Kim', 'story word', 'yarn')).toBeNull();
  });
});

describe('a story word is taken out', () => {
  test.each([
    [
      'lesson: "3"\nstory words:\n  yarn: wool # soft\n  pond: a lake',
      'lesson: "3"\nstory words:\n  pond: a lake',
    ],
    [
      'lesson: "3"\nstory words:\n  pond: a lake\n  yarn: wool\nnames: [Kim]',
      'lesson: "3"\nstory words:\n  pond: a lake\nnames: [Kim]',
    ],
    ['lesson: "3"\nstory words:\n  yarn: wool\nnames: [Kim]', 'lesson: "3"\nnames: [Kim]'],
    ['lesson: "3"\nstory words: {yarn: wool, pond: a lake}', 'lesson: "3"\nstory words: {pond: a lake}'],
    ['lesson: "3"\nstory words: {pond: a lake, yarn: wool}', 'lesson: "3"\nstory words: {pond: a lake}'],
    ['lesson: "3"\nstory words: [pond, yarn]', 'lesson: "3"\nstory words: [pond]'],
    ['lesson: "3"\nstory words:\n- yarn: wool\n- pond: a lake', 'lesson: "3"\nstory words:\n- pond: a lake'],
  ])('%j', (before, after) => {
    expect(front(before, 'remove', 'yarn')).toBe(after);
  });
});
