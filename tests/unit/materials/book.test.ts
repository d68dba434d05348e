import { describe, expect, test } from 'vitest';
import type { Layout, Paper } from '../../../server/src/materials/layout/paper.ts';
import { numberedPages, printed, storyToPrint } from '../../support/printed-story.ts';
import { type ReadNode, type ReadPdf, readPdf } from '../../support/read-pdf.ts';

const book = (pages: readonly string[], layout: Layout = 'page', paper: Paper = 'letter'): ReadPdf =>
  readPdf(printed('book', [storyToPrint(pages)], { layout, paper }).bytes);

/** Which pages of the book a side of a booklet shows, left and right: by its numbers; the title page is 0, blank `-`. */
function pagesOf({ width, texts }: ReadPdf['sides'][number]): string {
  const half = (isLeft: boolean): string => {
    const own = texts.filter(({ x }) => x < width / 2 === isLeft);
    if (own.some(({ text }) => text.startsWith('Fern Lane'))) return '0';
    return own.find(({ text }) => /^\d+$/.test(text))?.text ?? '-';
  };
  return `${half(true)} ${half(false)}`;
}

describe('the booklet', () => {
  test.each([
    [3, ['3 0', '1 2']],
    [7, ['7 0', '1 6', '5 2', '3 4']],
    [11, ['11 0', '1 10', '9 2', '3 8', '7 4', '5 6']],
    [15, ['15 0', '1 14', '13 2', '3 12', '11 4', '5 10', '9 6', '7 8']],
    [4, ['- 0', '1 -', '- 2', '3 4']],
  ])('of a title page and %i pages folds into order', (count, sides) => {
    expect(book(numberedPages(count), 'booklet').sides.map(pagesOf)).toEqual(sides);
  });

  test('is turned over its short edge', () => {
    const { bytes } = printed('book', [storyToPrint(numberedPages(3))], { layout: 'booklet' });
    expect(Buffer.from(bytes).includes('/Duplex /DuplexFlipShortEdge')).toBe(true);
  });
});

const formats: readonly (readonly [Layout, Paper, number, number])[] = [
  ['page', 'letter', 612, 792],
  ['page', 'a4', 595.276, 841.89],
  ['booklet', 'letter', 792, 612],
  ['booklet', 'a4', 841.89, 595.276],
];

describe.each(formats)('as %s on %s', (layout, paper, width, height) => {
  const long = `![a](hill.svg)\n${'The red net is in the big wet box and the sun is hot. '.repeat(12)}`;
  const pages = [
    ...numberedPages(5),
    'Stop!',
    long,
    '![tall](tall.svg)\nA tall one.',
    '![wide](wide.svg)\nA wide one.',
  ];
  const pictures = {
    'tall.svg':
      '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 20 400"><rect width="20" height="400"/></svg>',
    'wide.svg':
      '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 900 20"><rect width="900" height="20"/></svg>',
  };
  const result = printed('book', [storyToPrint(pages, { pictures })], { layout, paper });
  const pdf = readPdf(result.bytes);
  const columns = layout === 'page' ? [0] : [0, width / 2];
  const margin = layout === 'page' ? { side: 66, edge: 54 } : { side: 38, edge: 36 };

  test('has the size of the paper', () => {
    for (const side of pdf.sides) expect(side).toMatchObject({ width, height });
  });

  test('has no letter under 20 points', () => {
    expect(
      Math.min(...pdf.sides.flatMap(({ texts }) => texts.map(({ size }) => size))),
    ).toBeGreaterThanOrEqual(20);
  });

  test('keeps to the margins', () => {
    const pageWidth = width / columns.length;
    const outside = pdf.sides.flatMap(({ texts, pictures: shown }) =>
      [
        ...texts.map(({ text, x, y, width: long, size }) => ({
          what: text,
          left: x,
          right: x + long,
          bottom: y,
          top: y + 0.73 * size,
        })),
        ...shown.map((picture) => ({ what: 'picture', ...picture })),
      ].filter(({ left, right, bottom, top }) => {
        const column = [...columns].reverse().find((start) => left >= start) ?? 0;
        return !(
          left >= column + margin.side - 0.01 &&
          right <= column + pageWidth - margin.side + 0.01 &&
          bottom >= margin.edge - 0.01 &&
          top <= height - margin.edge
        );
      }),
    );
    expect(outside).toEqual([]);
  });

  test('has spaces wide enough for a finger', () => {
    // A line with three spaces is wider than its words by more than three spaces of the face (0.27 of the size).
    const line = pdf.sides
      .flatMap(({ texts }) => texts)
      .find(({ text }) => text === 'The mud is in the box.');
    const words = pdf.sides
      .flatMap(({ texts }) => texts)
      .find(({ text }) => text === 'The sun is in the box.');
    expect(line?.text.match(/ /g)).toHaveLength(5);
    expect((line?.width ?? 0) / (line?.size ?? 1)).toBeGreaterThan(5 * 0.45);
    expect(words).toBeDefined();
  });

  test('breaks no word', () => {
    const text = pdf.sides.flatMap(({ texts }) => texts.map((each) => each.text));
    const known = new Set(`${pages.join(' ')} The Red Box Lesson 2: x and sh Fern Lane`.split(/[\s\n]+/));
    const broken = text
      .flatMap((line) => line.split(' '))
      .filter((word) => !known.has(word) && !/^\d+$/.test(word));
    expect(broken).toEqual([]);
  });

  test('is without problems', () => {
    expect(result.problems).toEqual([]);
  });
});

describe('the structure', () => {
  const pdf = book([
    '![A net](hill.svg)\n"It\'s a net!" said Nod.\nThe net is red.',
    'Stop!',
    '![Nod naps]()\nNod naps.',
  ]);

  test('is tagged, with a title and a language', () => {
    expect(pdf).toMatchObject({ title: 'The Red Box', language: 'en-US', isMarked: true, unclaimed: [] });
    expect(pdf.sides.map(({ untagged }) => untagged)).toEqual([0, 0, 0, 0]);
  });

  test('reads the book in order, with a text for each picture', () => {
    expect(outline(pdf.structure)).toEqual([
      'Document',
      '  Part',
      '    H1 The Red Box',
      '    P Lesson 2: x and sh',
      '    P Fern Lane',
      '    Sect',
      '      Figure [A net]',
      '      P “It’s a net!” said Nod.',
      '      P The net is red.',
      '    Sect',
      '      Figure [An empty frame for a drawing]',
      '      P Stop!',
      '    Sect',
      '      Figure [An empty frame for a drawing: Nod naps]',
      '      P Nod naps.',
    ]);
  });

  test('keeps the lines of verse that the writer broke', () => {
    const { structure } = book(['The net  \nis red  \nin the sun.']);
    expect(outline(structure)).toContain('      P The net\nis red\nin the sun.');
  });

  test('has no frame where the text leaves no room to draw in', () => {
    const full = Array.from(
      { length: 16 },
      (_, line) => `The net is red in the ${['sun', 'mud', 'pan', 'hat'][line % 4]}.`,
    );
    const { structure } = book([full.join('\n'), 'A net.']);
    expect(outline(structure).filter((line) => line.includes('frame'))).toHaveLength(1);
  });

  test('says where each figure stands', () => {
    const boxes = Buffer.from(printed('book', [storyToPrint(['![A net](hill.svg)\nA net.'])]).bytes)
      .toString('latin1')
      .match(/\/S \/Figure .* \/BBox \[[\d. ]+\]/g);
    const [picture] = book(['![A net](hill.svg)\nA net.']).sides[1]?.pictures ?? [];
    const [left, bottom, right, top] = (/BBox \[(.*)\]/.exec(boxes?.[0] ?? '')?.[1] ?? '')
      .split(' ')
      .map(Number);
    expect(boxes).toHaveLength(1);
    for (const [written, drawn] of [
      [left, picture?.left],
      [bottom, picture?.bottom],
      [right, picture?.right],
      [top, picture?.top],
    ]) {
      expect(written).toBeCloseTo(drawn ?? -1, 2);
    }
  });

  test('has the fonts in it, a part of each', () => {
    expect(pdf.fonts.map((name) => name.replace(/^[A-Z]{6}\+/, ''))).toEqual(['Andika-Bold', 'Andika']);
  });
});

function outline({ type, alternative, text, children }: ReadNode, depth = 0): readonly string[] {
  const line = [type, alternative === undefined ? '' : `[${alternative}]`, text]
    .filter((part) => part !== '')
    .join(' ');
  return ['  '.repeat(depth) + line, ...children.flatMap((child) => outline(child, depth + 1))];
}

describe('a long page', () => {
  test('goes on on a page of its own, no sentence lost', () => {
    const sentences = Array.from({ length: 30 }, (_, index) => `The net is ${index + 1}.`);
    const pdf = book([`![a](hill.svg)\n${sentences.join('\n')}`]);
    const texts = pdf.sides.flatMap((side) => side.texts.map(({ text }) => text));
    expect(texts.filter((text) => text.startsWith('The net is'))).toEqual(sentences);
    expect(pdf.sides.length).toBeGreaterThan(2);
  });

  test('of one endless sentence goes on too', () => {
    const pdf = book([`The net ${'and the net '.repeat(200)}is red.`], 'booklet');
    const words = pdf.structure.children[0]?.children
      .flatMap((sect) => sect.children.map(({ text }) => text))
      .join(' ');
    expect(words?.match(/net/g)).toHaveLength(201);
  });
});

test('pages for the teacher alone are not in the book', () => {
  const pdf = book(['> Picture walk.', '![a](hill.svg)\nThe net.', '> Ask: who?']);
  expect(pdf.sides).toHaveLength(2);
  expect(pdf.sides.flatMap(({ texts }) => texts.map(({ text }) => text))).not.toContain('Picture walk.');
});

test('the same story gives the same bytes', () => {
  const once = printed('book', [storyToPrint(numberedPages(6))], { layout: 'booklet' }).bytes;
  const again = printed('book', [storyToPrint(numberedPages(6))], { layout: 'booklet' }).bytes;
  expect(Buffer.compare(once, again)).toBe(0);
  expect(Buffer.from(once).toString('latin1')).not.toMatch(/Date|\/ID/);
});

describe('what cannot be printed is said by name', () => {
  test.each([
    ['![a](gone.png)\nThe net.', 'The picture “gone.png” is not there.'],
    ['![a](bad.png)\nThe net.', 'The picture “bad.png” breaks off.'],
    [
      '![a](text.svg)\nThe net.',
      'The picture “text.svg” has the element “text”, which is not printed; turn it into paths.',
    ],
    [
      '![a](words.txt)\nThe net.',
      'The picture “words.txt” is neither a PNG, nor a JPEG, nor an SVG picture.',
    ],
    [
      'The net is жук.',
      'Andika, the face that everything is printed in, has no “ж” (U+0436), “у” (U+0443), “к” (U+043A).',
    ],
    [`A ${'sh'.repeat(40)}!`, `“${'sh'.repeat(40)}!” is too long for a line of 20-point letters.`],
  ])('%s', (page, message) => {
    const pictures = {
      'bad.png': Buffer.from(
        '89504e470d0a1a0a0000000d49484452000000100000001008020000000000000000000009494441547801',
        'hex',
      ),
      'text.svg': '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><text>hi</text></svg>',
      'words.txt': 'no picture',
    };
    const result = printed('book', [storyToPrint([page], { pictures })]);
    expect(result.problems.map((problem) => problem.message)).toEqual([message]);
    expect(result.problems[0]?.span).toBeDefined();
    expect(readPdf(result.bytes).sides).toHaveLength(2);
  });
});
