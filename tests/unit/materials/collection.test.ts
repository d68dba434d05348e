import { describe, expect, test } from 'vitest';
import { numberedPages, printed, storyToPrint } from '../../support/printed-story.ts';
import { readPdf } from '../../support/read-pdf.ts';

const stories = [
  storyToPrint(numberedPages(3), { title: 'The Net', lesson: '1' }),
  storyToPrint(numberedPages(4), { title: 'The Shed' }),
  storyToPrint(numberedPages(1), {
    title: 'A Story With a Title So Long That It Wants Two Lines of the List',
  }),
];
const pdf = readPdf(printed('book', stories).bytes);
const texts = pdf.sides.map((side) => side.texts.map(({ text }) => text));

describe('a collection', () => {
  test('has a cover that names its lessons', () => {
    expect(texts[0]).toEqual(['Stories of Fern Lane', '3 stories', 'Lessons 1 to 2', 'Fern Lane']);
    expect(pdf.title).toBe('Stories of Fern Lane');
  });

  test('has contents with the pages on which the stories begin', () => {
    expect(texts[2]).toEqual([
      'Contents',
      'The Net',
      '5',
      'The Shed',
      '9',
      'A Story With a Title So Long That',
      'It Wants Two Lines of the List',
      '15',
    ]);
    expect(texts[4]?.[0]).toBe('The Net');
    expect(texts[8]?.[0]).toBe('The Shed');
    expect(texts[14]?.[0]).toBe('A Story With a Title');
  });

  test('numbers its pages from the first to the last', () => {
    const numbers = texts.flatMap((side, index) =>
      /^\d+$/.test(side.at(-1) ?? '') && index > 3 ? [[index + 1, Number(side.at(-1))]] : [],
    );
    expect(numbers).toEqual([6, 7, 8, 10, 11, 12, 13, 16].map((number) => [number, number]));
  });

  test('has one title of the first rank, stories of the second', () => {
    const headings = pdf.structure.children
      .flatMap(({ children }) => children.map(({ type, text }) => `${type} ${text}`))
      .filter((each) => each.startsWith('H'));
    expect(headings.map((heading) => heading.slice(0, 12))).toEqual([
      'H1 Stories o',
      'H2 Contents',
      'H2 The Net',
      'H2 The Shed',
      'H2 A Story W',
    ]);
  });

  test('has a list of contents of several pages when it needs one', () => {
    const many = Array.from({ length: 60 }, (_, index) =>
      storyToPrint(['The net.'], { title: `Net ${index + 1}` }),
    );
    const sides = readPdf(printed('book', many).bytes).sides.map((side) =>
      side.texts.map(({ text }) => text),
    );
    const listed = sides
      .slice(2, 8)
      .flat()
      .filter((text) => text.startsWith('Net '));
    expect(listed.slice(0, 60)).toEqual(many.map((_, index) => `Net ${index + 1}`));
  });
});

test('what is wrong with a story is said once, and of which story', () => {
  const result = printed('book', [
    storyToPrint(['The net.']),
    storyToPrint(['The net.'], { title: 'The Net ☃' }),
  ]);
  expect(result.problems.map(({ story, message }) => `${story}: ${message}`)).toEqual([
    '1: Andika, the face that everything is printed in, has no “☃” (U+2603).',
  ]);
});

test('text that is too long to be read is not left out in silence', () => {
  const endless = storyToPrint([`The net. ${'A net.\n'.repeat(40_000)}`, 'The end.']);
  expect(
    printed('book', [endless])
      .problems.map(({ message }) => message)
      .join(' '),
  ).toContain('too long');
});
