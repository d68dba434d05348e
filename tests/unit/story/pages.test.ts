import { expect, test } from 'vitest';
import { readStory } from '../../../server/src/story/read-story.ts';

/** The words of each page. */
function pages(text: string): readonly string[] {
  return readStory(text).pages.map(({ page }) =>
    page.sentences.flatMap((sentence) => sentence.words.map((word) => word.text)).join(' '),
  );
}

test.each([
  ['one page', 'Kim ran.', ['Kim ran']],
  ['an empty text has one empty page', '', ['']],
  ['a break', 'Kim\n\n---\n\nPip', ['Kim', 'Pip']],
  ['right under text it is a break and no heading', 'Kim\n---\nPip', ['Kim', 'Pip']],
  ['a break half written', 'Kim\n--\nPip', ['Kim Pip']],
  [
    'other breaks',
    'Kim\n***\nPip\n___\nAnn\n- - -\nBob\n   * * * *  \nTod',
    ['Kim', 'Pip', 'Ann', 'Bob', 'Tod'],
  ],
  ['no breaks', 'Kim\n--\nPip\n\n    ---\n\nAnn -*-\n-_-', ['Kim Pip Ann']],
  ['breaks at the ends', '***\nKim\n---', ['', 'Kim', '']],
  [
    'in fenced code',
    'Kim\n\n```\n---\n```\n\n~~~~ text\n---\n~~~\n---\n~~~~\nPip\n---\nAnn',
    ['Kim Pip', 'Ann'],
  ],
  ['behind inline code like a fence', '```Kim```\n---\nPip', ['', 'Pip']],
  ['in code in a list', '- Kim\n- ```\n  ---\n  ```\n\nPip\n\n---\nAnn', ['Kim Pip', 'Ann']],
  ['in an unclosed fence', 'Kim\n```\n---\nPip', ['Kim']],
  ['in comments', 'Kim\n\n<!-- a\n---\nb -->\n\nPip\n\n<!-- c -->\n---\nAnn', ['Kim Pip', 'Ann']],
  ['behind a comment mark inside a line', 'Kim <!-- a\n---\nPip', ['Kim a', 'Pip']],
  ['behind a quote', '> Ask\n---\nPip', ['', 'Pip']],
  ['CRLF and CR', 'Kim\r\n---\r\nPip\r***\rAnn', ['Kim', 'Pip', 'Ann']],
  ['not in the front matter', '---\nlesson: 1\n---\nKim\n---\nPip', ['Kim', 'Pip']],
])('pages: %s', (_, text, expected) => {
  expect(pages(text)).toEqual(expected);
});

test('a page knows its source; its place adds up to the file', () => {
  const text = '---\nlesson: 1\n---\n# The Net\n\nKim\n\n---\n\n  Pip ran.\n';
  const story = readStory(text);
  expect(
    story.pages.map(({ page, start }) => text.slice(start, start + page.source.length) === page.source),
  ).toEqual([true, true]);
  expect(story.pages.map(({ number, page }) => [number, page.source])).toEqual([
    [1, '# The Net\n\nKim\n\n'],
    [2, '\n  Pip ran.\n'],
  ]);
});

test.each([
  ['the first heading', '# The *Red* Net!\n\nKim ran.', 'The Red Net!', '# The *Red* Net!'],
  ['underlined with equals signs', 'The Net\n=======\n\nKim', 'The Net', 'The Net\n======='],
  ['on a later page', 'Kim\n---\n## The Net', 'The Net', '## The Net'],
  ['not an empty one', '#\n\n# …\n\n# The Net', 'The Net', '# The Net'],
  ['not one in a quote', '> # Ask\n\n# The Net', 'The Net', '# The Net'],
])('title: %s', (_, text, title, written) => {
  const story = readStory(text);
  expect(story.title?.text).toBe(title);
  expect(text.slice(story.title?.span.start, story.title?.span.end)).toBe(written);
  const slices = story.title?.words.map(({ span }) => text.slice(span.start, span.end).replace('*', ''));
  expect(slices).toEqual(story.title?.words.map((word) => word.text));
});

test('the title is not among the running words, every other heading is', () => {
  expect(pages('# One\n\n# Two\n---\n# Three')).toEqual(['Two', 'Three']);
  expect(readStory('Kim').title).toBeUndefined();
});

test('pictures', () => {
  const text =
    '![A *girl* at a pond](art/net.png "t")\nKim\n\n![Two][net]\n![]()\n---\n> ![no](a.png)\n\n[net]: art/two.png';
  const found = readStory(text).pages.map(({ page }) =>
    page.illustrations.map(({ note, address, span }) => [
      note,
      address,
      page.source.slice(span.start, span.end),
    ]),
  );
  expect(found).toEqual([
    [
      ['A girl at a pond', 'art/net.png', '![A *girl* at a pond](art/net.png "t")'],
      ['Two', 'art/two.png', '![Two][net]'],
      ['', '', '![]()'],
    ],
    [],
  ]);
});

test('notes for the teacher', () => {
  const text = 'Kim ran.\n\n> Ask: *Why*\n> did she?\n>\n> - One\n> - Two\n\nPip sat.';
  const notes = readStory(text).pages.flatMap(({ page }) => page.notes);
  expect(notes.map((note) => note.text)).toEqual(['Ask: Why did she?\nOne\nTwo']);
  expect(notes.map(({ span }) => text.slice(span.start, span.end))).toEqual([
    '> Ask: *Why*\n> did she?\n>\n> - One\n> - Two',
  ]);
});
