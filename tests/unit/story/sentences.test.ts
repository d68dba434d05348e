import { expect, test } from 'vitest';
import { readStory } from '../../../server/src/story/read-story.ts';

function sentences(text: string): readonly string[] {
  return readStory(text).pages.flatMap(({ page }) => page.sentences.map((sentence) => sentence.text));
}

test.each([
  ['two', 'Kim ran. Pip sat.', ['Kim ran.', 'Pip sat.']],
  ['without a mark at the end', 'Kim ran. Pip', ['Kim ran.', 'Pip']],
  ['no words, no sentence', '! … "', []],
  ['several marks', 'What?! No! Go…', ['What?!', 'No!', 'Go…']],
  ['speech goes on with who said it', '"Stop!" said Kim.', ['"Stop!" said Kim.']],
  ['curly speech', '“Is it?” asked Pip. “Yes!”', ['“Is it?” asked Pip.', '“Yes!”']],
  ['speech, then another sentence', '"Go!" Kim ran.', ['"Go!"', 'Kim ran.']],
  ['speech with the name first', '"Go!" Kim said. Pip ran.', ['"Go!" Kim said.', 'Pip ran.']],
  ['speech with two names', '“Go!” Mom and Dad yelled.', ['“Go!” Mom and Dad yelled.']],
  ['speech with a title and a name', '“Go!” Mr. Hill said.', ['“Go!” Mr. Hill said.']],
  ['speech, then a sentence about saying', '“Go!” She said it.', ['“Go!”', 'She said it.']],
  ['speech after its saying', 'Kim said, “Go!” Pip ran.', ['Kim said, “Go!”', 'Pip ran.']],
  ['single quotation marks', "'Stop!' said Kim. 'Go!' Pip ran.", ["'Stop!' said Kim.", "'Go!'", 'Pip ran.']],
  ['two speeches', '“Go!” “No!”', ['“Go!”', '“No!”']],
  ['straight marks, two speeches', '"Go!" "No!" said Pip.', ['"Go!"', '"No!" said Pip.']],
  ['two sentences in one speech', '“Go! Go on!” said Kim.', ['“Go!', 'Go on!” said Kim.']],
  ['brackets', '(Kim ran.) Pip sat.', ['(Kim ran.)', 'Pip sat.']],
  ['a noise inside', 'Splash! went the frog.', ['Splash! went the frog.']],
  ['a pause inside', 'Kim … ran. And… I ran.', ['Kim … ran.', 'And… I ran.']],
  ['a small letter after a stop is a slip', 'kim ran. she sat.', ['kim ran.', 'she sat.']],
  ['titles', 'I see Mr. Hill. Dr. Bell ran.', ['I see Mr. Hill.', 'Dr. Bell ran.']],
  ['a title at the end', 'It is the Dr.\n\nKim ran.', ['It is the Dr.', 'Kim ran.']],
  ['a street', 'Go to Pond St. Kim ran.', ['Go to Pond St.', 'Kim ran.']],
  ['a saint', 'Go to St. Ann now.', ['Go to St. Ann now.']],
  ['a time', 'Get up at 7 a.m. Then run.', ['Get up at 7 a.m.', 'Then run.']],
  ['a number at the head', '1\\. Kim ran.', ['1. Kim ran.']],
  ['a number at the end', 'I see 2. Kim ran.', ['I see 2.', 'Kim ran.']],
  ['paragraphs', 'Kim\n\nPip', ['Kim', 'Pip']],
  ['list items', '- Kim\n- Pip', ['Kim', 'Pip']],
  ['verse', 'Kim ran\nPip sat', ['Kim ran', 'Pip sat']],
  [
    'verse with a hard break',
    'Kim ran  \nPip sat\\\nAnn hid<br>Bob',
    ['Kim ran', 'Pip sat', 'Ann hid', 'Bob'],
  ],
  ['a line that goes on', 'Kim ran\nto the pond.', ['Kim ran to the pond.']],
  ['I opens no line', 'Then\nI ran and\nI’m hot.', ['Then I ran and I’m hot.']],
  ['a line that needs a word', 'I see Pip and\nKim.', ['I see Pip and Kim.']],
  ['a line with a comma', 'One cat,\nTwo cats.', ['One cat, Two cats.']],
  [
    'a wrapped line',
    'The cat and the dog ran up the hill to the big red hut to see what\nKim had hid.',
    ['The cat and the dog ran up the hill to the big red hut to see what Kim had hid.'],
  ],
  ['speech over two lines', '“Go!”\nsaid Kim.', ['“Go!” said Kim.']],
  ['white space is folded', 'Kim  \t ran\r\nup.', ['Kim ran up.']],
  [
    'a later heading is read',
    '# The Net\n\nKim ran.\n\n## Later\n\nPip sat.',
    ['Kim ran.', 'Later', 'Pip sat.'],
  ],
])('%s', (_, text, expected) => {
  expect(sentences(text)).toEqual(expected);
});

test('a sentence stands from its first mark to its last', () => {
  const text = 'Kim sat.\n\n> Ask.\n\n“Go *up*!” Pip';
  const spans = readStory(text).pages.flatMap(({ page }) => page.sentences.map((sentence) => sentence.span));
  expect(spans.map(({ start, end }) => text.slice(start, end))).toEqual(['Kim sat.', '“Go *up*!”', 'Pip']);
});

test.each([
  ['two spaces', 'The cat ran  \nin the sun  \nand had fun.'],
  ['a backslash', 'The cat ran\\\nin the sun\\\nand had fun.'],
  ['br', 'The cat ran<br>in the sun<br/>and had fun.'],
])('lines that the writer broke herself are kept beside the sentence: %s', (_, text) => {
  const [sentence] = readStory(text).pages[0]?.page.sentences ?? [];
  expect(sentence).toMatchObject({
    text: 'The cat ran in the sun and had fun.',
    lines: ['The cat ran', 'in the sun', 'and had fun.'],
  });
});

test('a line that is only wrapped in the draft is none of its own', () => {
  expect(readStory('The cat ran\nin the sun.').pages[0]?.page.sentences[0]).not.toHaveProperty('lines');
});
