import { describe, expect, test } from 'vitest';
import { readStory } from '../../../server/src/story/read-story.ts';

const story = (lines: string) => `---\n${lines}\n---\nKim ran.\n`;

describe('what it says', () => {
  const all = `title: "The Pond: a Story"
lesson: 12 # not 13
sequence: ../other.yaml
names: [Kim, 'Mr. Hill']
story words:
  pond: a small lake
  net:
pronunciations:
  Zib: z i b`;

  test('every key', () => {
    const { isStory, frontMatter } = readStory(story(all));
    expect(isStory).toBe(true);
    expect(frontMatter.title?.value).toBe('The Pond: a Story');
    expect(frontMatter.lesson?.value).toBe('12');
    expect(frontMatter.sequence?.value).toBe('../other.yaml');
    expect(frontMatter.names.map(({ value }) => value)).toEqual(['Kim', 'Mr. Hill']);
    expect(frontMatter.storyWords.map(({ word, meaning }) => [word, meaning])).toEqual([
      ['pond', 'a small lake'],
      ['net', ''],
    ]);
    expect(frontMatter.pronunciations.map(({ word, graphemes }) => [word.value, graphemes.value])).toEqual([
      ['Zib', 'z i b'],
    ]);
    expect(frontMatter.problems.map(({ message, severity }) => [severity, message])).toEqual([
      ['warning', '“net” has no meaning yet. Write behind the colon how it is explained.'],
    ]);
  });

  test('words in a list need no meaning', () => {
    expect(readStory(story('lesson: 1\nstory words: [pond, net]')).frontMatter.problems).toEqual([]);
  });

  test.each(['\n', '\r\n', '\r'])('every place, with line ends %j, behind a byte-order mark', (lineEnd) => {
    const text = `\uFEFF${story(all).replaceAll('\n', lineEnd)}`;
    const { frontMatter, pages } = readStory(text);
    const at = (span: { start: number; end: number } | undefined) => text.slice(span?.start, span?.end);
    expect(at(frontMatter.title?.span)).toBe('"The Pond: a Story"');
    expect(at(frontMatter.lesson?.span)).toBe('12');
    expect(frontMatter.names.map(({ span }) => at(span))).toEqual(['Kim', "'Mr. Hill'"]);
    expect(frontMatter.storyWords.map(({ span }) => at(span))).toEqual(['pond', 'net']);
    expect(frontMatter.pronunciations.map(({ graphemes }) => at(graphemes.span))).toEqual(['z i b']);
    expect(text.slice(pages[0]?.start)).toBe(`Kim ran.${lineEnd}`);
  });

  test.each([
    ['one name', 'names: Kim', 'Kim'],
    ['names under each other', 'names:\n- Kim\n- Pip', 'Kim Pip'],
    ['names in brackets over several lines', 'names: [\n  Kim,\n  Pip\n]', 'Kim Pip'],
    ['no names', 'names:', ''],
  ])('%s', (_, lines, names) => {
    const { frontMatter } = readStory(story(`lesson: 1\n${lines}`));
    expect(frontMatter.names.map(({ value }) => value).join(' ')).toBe(names);
    expect(frontMatter.problems).toEqual([]);
  });

  test.each([
    ['a list', 'story words: [pond, net]', 'pond= net='],
    ['a list with meanings', 'story words:\n  - pond\n  - net: to fish with', 'pond= net=to fish with'],
    ['one word', 'story words: pond', 'pond='],
  ])('story words: %s', (_, lines, expected) => {
    const { frontMatter } = readStory(story(`lesson: 1\n${lines}`));
    expect(frontMatter.storyWords.map(({ word, meaning }) => `${word}=${meaning}`).join(' ')).toBe(expected);
    expect(frontMatter.problems).toEqual([]);
  });

  test.each([
    ['12', '12'],
    ['"12"', '12'],
    ['1.10', '1.10'],
    ['012', '012'],
    ['2b', '2b'],
    ['no', 'no'],
  ])('lesson: %s', (written, lesson) => {
    expect(readStory(story(`lesson: ${written}`)).frontMatter.lesson?.value).toBe(lesson);
  });
});

describe('what is a story', () => {
  test.each([
    ['a lesson', '---\nlesson: 1\n---\nKim', true],
    ['an empty lesson', '---\nlesson:\n---\nKim', true],
    ['a half-written lesson', '---\nlesson: "1\n---\nKim', true],
    ['a lesson without its space', '---\nlesson:1\n---\nKim', true],
    ['a front matter that is not closed', '---\nlesson: 1\n\nKim', true],
    ['lesson in braces', '---\n{lesson: 1}\n---', true],
    ['no lesson', '---\ntitle: Notes\n---\nKim', false],
    ['no front matter', '# Notes\n\nlesson: 1', false],
    ['a page break at the head', '---\n\nKim ran.\n', false],
    ['a lesson under another key', '---\nplan:\n  lesson: 1\n---\nKim', false],
    ['an empty text', '', false],
    ['a lonely fence', '---', false],
  ])('%s', (_, text, expected) => {
    expect(readStory(text).isStory).toBe(expected);
  });
});

describe('what is wrong', () => {
  /** Each problem as its place in the text and part of its message. */
  test.each([
    ['an empty lesson', 'lesson:', [['lesson', 'Name the lesson']]],
    ['a list for a lesson', 'lesson: [1]', [['[1]', 'takes one value, not a list']]],
    ['keys for a title', 'lesson: 1\ntitle:\n  a: b', [['a: b', 'takes one value, not keys']]],
    ['a mistyped key', 'lesson: 1\nnmaes: [Kim]', [['nmaes', '"names" may be meant']]],
    ['a key of a wrong kind', 'lesson: 1\nauthor: me', [['author', 'it may have title, lesson']]],
    ['a key twice', 'lesson: 1\nlesson: 2', [['lesson', 'a second time']]],
    ['a story word twice', 'lesson: 1\nstory words:\n  pond: a\n  pond: b', [['pond', 'a second time']]],
    [
      'story words without a list',
      'lesson: 1\nstory words: pond, net',
      [['pond, net', 'Several story words']],
    ],
    ['a name that is a list', 'lesson: 1\nnames: [[Kim], Pip]', [['[Kim]', 'A name is']]],
    ['names in one text', 'lesson: 1\nnames: Kim, Pip', [['Kim, Pip', 'are a list']]],
    ['a reading that is missing', 'lesson: 1\npronunciations:\n  Zib:', [['Zib', 'graphemes of "Zib"']]],
    ['readings as a list', 'lesson: 1\npronunciations: [Zib]', [['[Zib]', 'each word with its graphemes']]],
    ['a tag', 'lesson: !x 1', [['!x', 'Tags have no meaning']]],
    ['an open bracket', 'lesson: 1\nnames: [Kim', [['names: [Kim', 'closing bracket']]],
    ['an open quotation', 'lesson: 1\ntitle: "The Pond', [['title: "The Pond', 'closing quotation mark']]],
    ['a colon in a value', 'title: Day 1: Go\nlesson: 1', [['Day 1: Go', 'quotation marks']]],
    ['no colon', 'lesson: 1\ntitle The Pond', [['title The Pond', 'no entry']]],
    ['no space', 'lesson:1', [['lesson:1', 'space behind the colon']]],
    ['a list at the top', '- Kim', [['- Kim', 'no entry']]],
    ['a tab', 'lesson: 1\nstory words:\n\tpond: x', [['\t', 'spaces']]],
    ['lines that run together', 'lesson: 1\nstory words:\n  pond\n  net', [['pond\n  net', 'run together']]],
    [
      'a story word without its colon',
      'lesson: 1\nstory words: [pond is a lake]',
      [['pond is a lake', 'A colon']],
    ],
  ])('%s', (_, lines, expected) => {
    const text = story(lines);
    const { problems } = readStory(text).frontMatter;
    expect(problems.map(({ span }) => text.slice(span.start, span.end))).toEqual(
      expected.map(([place]) => place),
    );
    for (const [index, [, message]] of expected.entries())
      expect(problems[index]?.message).toContain(message);
  });

  test('a broken line spoils only itself', () => {
    const text = story(`title "The Pond
names: [Kim, Pip
lesson: 4
story words:
  pond: a small: lake
  a line of prose
  net: to fish with
sequence: *other`);
    const { frontMatter } = readStory(text);
    expect(frontMatter.lesson?.value).toBe('4');
    expect(frontMatter.names.map(({ value }) => value)).toEqual(['Kim', 'Pip']);
    expect(frontMatter.storyWords.map(({ word, meaning }) => [word, meaning])).toEqual([
      ['pond', 'a small: lake'],
      ['net', 'to fish with'],
    ]);
    expect(frontMatter.problems.map(({ span }) => text.slice(span.start, span.end))).toEqual([
      'title "The Pond',
      'names: [Kim, Pip',
      'a small: lake',
      'a line of prose',
      '*other',
    ]);
  });

  test.each([
    ['at the first empty line', '---\nlesson: 1\n\n# The Net\n\nKim ran.\n\n---\n\nPip sat.'],
    ['at a heading', '---\nlesson: 1\n# The Net\n\nKim ran.\n---\nPip sat.'],
    [
      'at a picture',
      '---\nlesson: 1\n![A net](a.png)\n\n# The Net\n\nKim said: go. Kim ran.\n\n---\n\nPip sat.',
    ],
  ])('not closed: it ends %s', (_, text) => {
    const { frontMatter, title, pages } = readStory(text);
    expect(frontMatter.problems.map(({ message }) => message)).toEqual([
      expect.stringContaining('not closed'),
    ]);
    expect(frontMatter.lesson?.value).toBe('1');
    expect(title?.text).toBe('The Net');
    expect(pages).toHaveLength(2);
  });

  test('empty lines and comments do not end it', () => {
    const { frontMatter, pages } = readStory(story('lesson: 1\n\n# the names\n\nnames: [Kim]\n\n# all'));
    expect(frontMatter.problems).toEqual([]);
    expect(frontMatter.names).toHaveLength(1);
    expect(pages).toHaveLength(1);
  });
});
