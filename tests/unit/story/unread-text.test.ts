import { expect, test } from 'vitest';
import { takeIndentAway } from '../../../server/src/fixes/take-indent-away.ts';
import { edited } from '../../../server/src/fixes/text-edit.ts';
import { readStory } from '../../../server/src/story/read-story.ts';

const problems = (text: string) =>
  readStory(text).pages.flatMap(({ page, start }) =>
    page.problems.map(({ message, span }) => ({
      message,
      marked: text.slice(start + span.start, start + span.end),
    })),
  );

test.each([
  ['four spaces', 'Kim\n\n    Pip ran.\n', 'four spaces', 'Pip ran.', 'Kim\n\nPip ran.\n'],
  ['a tab', '\tPip ran.\nAnn', 'a tab', 'Pip ran.', 'Pip ran.\nAnn'],
  [
    'several lines and paragraphs',
    '    Pip ran.\n\n      Ann sat.\r\n    Bob.\n\nKim',
    'four spaces',
    'Pip ran.',
    'Pip ran.\n\nAnn sat.\r\nBob.\n\nKim',
  ],
  ['on a later page', 'Kim\n\n---\n\n  \tPip ran.\n', 'a tab', 'Pip ran.', 'Kim\n\n---\n\nPip ran.\n'],
])('indented text is told and mended: %s', (_, text, how, marked, mended) => {
  const [problem, ...more] = problems(text);
  expect(problem).toMatchObject({ message: expect.stringContaining(how), marked });
  expect(more).toEqual([]);
  const after = edited(text, takeIndentAway(text, text.indexOf(marked)));
  expect(after).toBe(mended);
  expect(problems(after)).toEqual([]);
});

test.each([
  ['<p>The hen sat.</p>', '<p>The hen sat.</p>'],
  ['Kim\n\n<div>\nThe cat.\n</div>', '<div>'],
  ['<!-- a --> Pip <!-- b -->', '<!-- a --> Pip <!-- b -->'],
])('words in HTML are told: %j', (text, marked) => {
  expect(problems(text)).toEqual([{ message: expect.stringContaining('HTML'), marked }]);
});

test.each([
  '<!-- The hen sat. -->',
  '<!-- a\n\nb',
  '<br>',
  '<div align="right">',
  '<style>\np { a: b }\n</style>',
])('nothing is told of %j', (text) => {
  expect(problems(text)).toEqual([]);
});

test.each([
  ['fenced code', '```\nPip ran.\n```\n'],
  ['fenced code in a list', '- Kim\n\n  ```\n  Pip\n  ```\n'],
  ['a line that goes on', 'Kim\n    ran.\n'],
  ['marks only', 'Kim\n\n    ---\n'],
  ['a note for the teacher', '>     Ask\n'],
  ['three spaces', '   Kim ran.\n'],
])('nothing is told of %s', (_, text) => {
  expect(problems(text)).toEqual([]);
});

test.each([
  ['![A boy]', '![A boy]'],
  ['Kim ran.\n![A boy and his dog]\nPip sat.', '![A boy and his dog]'],
  ['![A boy][hill]', '![A boy]'],
])('a picture without its round brackets is told: %j', (text, marked) => {
  expect(problems(text)).toEqual([
    { message: expect.stringContaining('A picture needs round brackets'), marked },
  ]);
});

test.each(['![A boy]()', '![A boy](boy.png)', '![A boy][hill]\n\n[hill]: hill.png', 'Stop! [Kim] sat.'])(
  '%j is a picture, or none is meant',
  (text) => {
    expect(problems(text)).toEqual([]);
  },
);
