import { describe, expect, test } from 'vitest';
import { type ColumnUse, guessColumns } from '../../../server/src/start/column-uses.ts';
import { importSequence } from '../../../server/src/start/import-sequence.ts';
import { readCsv } from '../../../server/src/start/read-csv.ts';
import type { LessonPlan } from '../../../server/src/start/sequence-plan.ts';
import { packagePhonics } from '../../support/package-phonics.ts';

/** What a spreadsheet comes to, its columns taken as guessed or as said. */
function imported(csv: string, uses?: readonly ColumnUse[]) {
  const table = readCsv(csv);
  const headings = table.rows[0]?.cells.map(({ text }) => text) ?? [];
  const { plan, problems } = importSequence(table, uses ?? guessColumns(headings), packagePhonics);
  return {
    lessons: plan.lessons,
    problems: problems.map(({ message, span }) => `${csv.slice(span.start, span.end)}: ${message}`),
  };
}

describe('headings', () => {
  test.each<[string, ColumnUse]>([
    ['Lesson', 'lesson'],
    ['LESSON NO.', 'lesson'],
    ['Week', 'lesson'],
    ['Unit', 'lesson'],
    ['Focus', 'title'],
    ['Lesson title', 'title'],
    ['Graphemes', 'spellings'],
    ['New spellings', 'spellings'],
    ['Letter(s)', 'spellings'],
    ['GPCs', 'spellings'],
    ['Key words', 'key words'],
    ['Example word', 'key words'],
    ['High-Frequency Words', 'high-frequency words'],
    ['New high frequency words (3 a week)', 'high-frequency words'],
    ['HFW', 'high-frequency words'],
    ['Tricky words', 'high-frequency words'],
    ['Suffixes', 'endings'],
    ['Consonant clusters', 'blends'],
    ['Syllables', 'syllables'],
    ['Punctuation', 'punctuation'],
    ['Story words', 'story words'],
    ['Books in the cupboard', 'note'],
    ['', 'note'],
  ])('“%s” is taken for %s', (heading, use) => {
    expect(guessColumns([heading])).toEqual([use]);
  });

  test('the plainest heading gets what only one column can be', () => {
    expect(guessColumns(['Lesson focus', 'Week', 'Lesson'])).toEqual(['title', 'note', 'lesson']);
  });
});

const rows = [
  ['Lesson', 'Graphemes', 'Tricky words', 'Remarks'],
  ['1', 't as in top; a as in map', 'the, I', ''],
  ['2', '"two words", said', 'said', 'look again'],
];
const quoted = (cell: string): string => (/[",;\t\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);

describe('a table is the same table', () => {
  const expected = readCsv(rows.map((row) => row.map(quoted).join(',')).join('\n'));
  test.each([
    ['with semicolons', ';', '\n', ''],
    ['with tabs', '\t', '\n', ''],
    ['with CRLF', ',', '\r\n', ''],
    ['with CR alone', ';', '\r', ''],
    ['with a byte-order mark', ',', '\n', '\ufeff'],
    ['with its separator named', ';', '\r\n', 'sep=;\r\n'],
  ])('%s', (_, separator, lineEnd, before) => {
    const text = before + rows.map((row) => row.map(quoted).join(separator)).join(lineEnd);
    expect(readCsv(text).rows.map(({ cells }) => cells.map((cell) => cell.text))).toEqual(
      expected.rows.map(({ cells }) => cells.map((cell) => cell.text)),
    );
  });

  test('a cell of several lines', () => {
    expect(imported('lesson,graphemes\r\n1,"t as in top\r\na as in map"\r\n').lessons).toEqual([
      { name: '1', spellings: ['t as in top', 'a as in map'] },
    ]);
  });
});

test.each<[string, string[]]>([
  ['ai as in rain', ['ai as in rain']],
  ['ai (rain)', ['ai as in rain']],
  ['ai (as in rain, pain)', ['ai as in rain']],
  ['/sh/ in ship', ['sh as in ship']],
  ['ai: rain; -ck = duck', ['ai as in rain', 'ck as in duck']],
  ['a-e (cake), “igh” – light', ['a_e as in cake', 'igh as in light']],
  ['short a', ['a as in map']],
])('the spellings %s', (cell, spellings) => {
  expect(imported(`lesson;graphemes\n1;"${cell}"\n`).lessons[0]?.spellings).toEqual(spellings);
});

test('further words beside a key word are kept as a comment', () => {
  expect(imported('lesson;graphemes\n1;ai (as in rain, pain)\n').lessons[0]?.remarks).toEqual([
    'more key words: pain',
  ]);
});

test('letters by themselves get the usual key word, of several sounds the first that is not taught yet', () => {
  const { lessons, problems } = imported('lesson,graphemes\n1,"c, sh"\n2,c\n');
  expect(lessons.map(({ spellings }) => spellings)).toEqual([
    ['c as in cat', 'sh as in ship'],
    ['c as in city'],
  ]);
  expect(problems[0]).toBe(
    '"c, sh": Row 2: no key word was given, so the usual one was put in: c as in cat, sh as in ship. See whether that sound is meant.',
  );
});

test('key words in a column of their own go to their letters', () => {
  const { lessons, problems } = imported(
    'lesson,graphemes,key words\n1,"sh, ch","shell, chop"\n2,"ai, ay","play"\n',
  );
  expect(lessons.map(({ spellings }) => spellings)).toEqual([
    ['sh as in shell', 'ch as in chop'],
    ['ai as in rain', 'ay as in play'],
  ]);
  expect(problems).toHaveLength(1);
});

test('nothing is lost: what is not understood is a comment at its lesson and a problem at its cell', () => {
  const { lessons, problems } = imported(
    'lesson,graphemes,endings,syllables,books\n1,"sh as in ship; the long a","-ing, -ous",some,The Hen\n',
  );
  const expected: LessonPlan = {
    name: '1',
    spellings: ['sh as in ship'],
    endings: ['ing'],
    remarks: [
      'graphemes, not understood: the long a',
      'endings, not understood: -ous',
      'syllables, not understood: some',
      'books: The Hen',
    ],
  };
  expect(lessons).toEqual([expected]);
  expect(problems).toEqual([
    '"sh as in ship; the long a": Row 2: “the long a” was not understood as a spelling; it stands as a comment.',
    '"-ing, -ous": Row 2: “-ous” was not understood as an ending; it stands as a comment.',
    'some: Row 2: “some” was not understood as a number of syllables; it stands as a comment.',
  ]);
});

test('marks by sign and by name, blends by their usual names', () => {
  const { lessons } = imported(
    'lesson;blends;punctuation\n1;final blends;"question mark, exclamation point"\n2;initial and three;"? ; ,"\n',
  );
  expect(lessons).toEqual([
    { name: '1', blends: ['end'], punctuation: ['?', '!'] },
    { name: '2', blends: ['start', 'three'], punctuation: ['?', ';', ','] },
  ]);
});

test('a row without a lesson gets a name, and a quotation mark left open is said', () => {
  const { lessons, problems } = imported('lesson,graphemes\n,sh as in ship\n3,"ch as in chin\n');
  expect(lessons.map(({ name }) => name)).toEqual(['1', '3']);
  expect(problems).toEqual([
    '": A quotation mark is opened here and never closed, so the rest of the file is one cell.',
    ': Row 2: it names no lesson, so the lesson is named “1”.',
  ]);
});

test('a column can be taken for something else, or left out', () => {
  const { lessons } = imported('A,B,C\n1,sh,no\n', ['lesson', 'spellings', 'left out']);
  expect(lessons).toEqual([{ name: '1', spellings: ['sh as in ship'] }]);
});

test.each([
  ['commas', ','.repeat(200_000)],
  ['brackets', 'a (b, '.repeat(40_000)],
  ['slashes', '/'.repeat(200_000)],
  ['quotes', '"'.repeat(200_000)],
  ['lines', 'sh\n'.repeat(60_000)],
])('a cell of nothing but %s is read like any other', (_, cell) => {
  const csv = `lesson,graphemes,words,endings,blends,punctuation\n1${`,"${cell.replaceAll('"', '""')}"`.repeat(5)}\n`;
  expect(imported(csv).lessons[0]?.name).toBe('1');
});
