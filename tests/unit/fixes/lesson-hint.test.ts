import { describe, expect, test } from 'vitest';
import { lessonHint } from '../../../server/src/fixes/lesson-hint.ts';
import { edited } from '../../../server/src/fixes/text-edit.ts';
import { readStory } from '../../../server/src/story/read-story.ts';

const story = '---\nlesson: "1"\n---\nKim ran.\n';

test.each([
  ['a capital', '---\nLesson: "1"\n---\nKim ran.\n', 'Lesson', story],
  ['all capitals', '---\nLESSON: "1"\n---\nKim ran.\n', 'LESSON', story],
  ['a letter too many', '---\nlessons: "1"\n---\nKim ran.\n', 'lessons', story],
  ['a letter missing', '---\nleson: "1"\n---\nKim ran.\n', 'leson', story],
  [
    'a key among others',
    '---\ntitle: A\n"Lesson": "1"\n---\nKim ran.\n',
    '"Lesson"',
    '---\ntitle: A\nlesson: "1"\n---\nKim ran.\n',
  ],
  ['an empty line before', `\n${story}`, '---', story],
  ['many of them, and white space', ` \r\n\n  ${story}`, '---', story],
  ['behind a byte-order mark', `\uFEFF\n${story}`, '---', `\uFEFF${story}`],
  [
    'a heading before',
    '# The Net\n\n---\nlesson: "1"\n---\nKim ran.\n',
    '---',
    '---\nlesson: "1"\n---\n# The Net\n\nKim ran.\n',
  ],
  ['no hyphens at all', 'lesson: "1"\n\nKim ran.\n', 'lesson', '---\nlesson: "1"\n---\n\nKim ran.\n'],
  [
    'none before, and a capital',
    'Title: A\nLesson: "1"\n---\nKim ran.\n',
    'Lesson',
    '---\nTitle: A\nlesson: "1"\n---\nKim ran.\n',
  ],
  ['a dash in place of hyphens', '—\nlesson: "1"\n—\nKim ran.\n', 'lesson', story],
  ['one hyphen too many', '----\nlesson: "1"\n----\nKim ran.\n', 'lesson', story],
  ['nothing behind', 'lesson: "1"', 'lesson', '---\nlesson: "1"\n---'],
  [
    'keys with lines below',
    'lesson: "1"\nstory words:\n  pond: a lake\nKim ran.\n',
    'lesson',
    '---\nlesson: "1"\nstory words:\n  pond: a lake\n---\nKim ran.\n',
  ],
])('a lesson nearly named is a hint and becomes a story: %s', (_, text, marked, mended) => {
  const hint = lessonHint(readStory(text));
  expect(hint && text.slice(hint.span.start, hint.span.end)).toBe(marked);
  const after = edited(text, hint?.edits ?? []);
  expect(after).toBe(mended);
  expect(readStory(after).isStory).toBe(true);
});

describe('no hint', () => {
  test.each([
    ['a story', story],
    ['an empty file', ''],
    ['plain markdown', '# Notes\n\nLessons are on Monday.\n\n---\n\nThe lesson: read.\n'],
    ['front matter of something else', '---\nlayout: page\nreason: "1"\n---\nA lesson.\n'],
    ['a page break before prose', '---\n\nThe lesson begins.\n'],
    ['a lesson in a list of words', 'A lesson: it is fun.\n'],
    ['an example further down, in code', '# How\n\n```\ntitle: A\nlesson: "1"\n```\n'],
  ])('in %s', (_, text) => {
    expect(lessonHint(readStory(text))).toBeUndefined();
  });
});
