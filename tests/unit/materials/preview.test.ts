import { describe, expect, test } from 'vitest';
import { labelOf, svgElements } from '../../../client/src/preview/svg-page.ts';
import type { Material, PrintOrder } from '../../../server/src/materials/order.ts';
import { createPreviewer } from '../../../server/src/materials/preview/previewer.ts';
import { packageFonts } from '../../support/package-fonts.ts';
import {
  hillPicture,
  numberedPages,
  orderOf,
  printed,
  type StoryWish,
  storyToPrint,
} from '../../support/printed-story.ts';
import { readPdf } from '../../support/read-pdf.ts';
import { smallPng } from '../../support/small-png.ts';

const previewer = createPreviewer(packageFonts);

interface Place {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly size: number;
}

/** The text of a drawn side as its SVG elements place it: where each stretch begins, from the upper left corner. */
function drawnTexts(order: PrintOrder): readonly (readonly Place[])[] {
  return previewer(order).document.sides.map((side) =>
    svgElements(side).flatMap(({ tag, text = '', attributes }) =>
      tag === 'text'
        ? [
            {
              text,
              x: Number(attributes.x?.split(' ')[0]),
              y: Number(attributes.y),
              size: Number(attributes['font-size']),
            },
          ]
        : [],
    ),
  );
}

/** The same as an independent reader finds it in the PDF. */
function printedTexts(order: PrintOrder): readonly (readonly Place[])[] {
  const { bytes } = printed(order.material, order.stories, order);
  return readPdf(bytes).sides.map(({ height, texts }) =>
    texts.map(({ text, x, y, size }) => ({ text, x, y: height - y, size })),
  );
}

const rich = storyToPrint(
  [
    '![A hill](hill.svg)\n"The fox sat in the ship," said Kim. Café š!\n\n> Ask: Is it wet?\n',
    'The duck had a cake. It was of the sun. A fox was in the box.\n',
    ...numberedPages(3),
  ],
  { frontMatter: 'names: [Kim]\nstory words: { pond: a small lake }\n' },
);

describe('what is seen is what is printed', () => {
  test.each([
    ['book', 'page', 'letter'],
    ['book', 'page', 'a4'],
    ['book', 'booklet', 'letter'],
    ['teacher', 'page', 'letter'],
    ['practice', 'page', 'a4'],
    ['cards', 'page', 'letter'],
  ] as const)(
    '%s, %s, %s: the same text at the same places, in the same order',
    (material, layout, paper) => {
      const order = { ...orderOf([rich]), material, layout, paper };
      const drawn = drawnTexts(order);
      const inPdf = printedTexts(order);
      expect(drawn.map((side) => side.map(({ text }) => text))).toEqual(
        inPdf.map((side) => side.map(({ text }) => text)),
      );
      for (const [side, texts] of drawn.entries()) {
        for (const [at, place] of texts.entries()) {
          const other = inPdf[side]?.[at];
          expect(Math.abs(place.x - (other?.x ?? -1)), place.text).toBeLessThan(0.05);
          expect(Math.abs(place.y - (other?.y ?? -1)), place.text).toBeLessThan(0.05);
          expect(Math.abs(place.size - (other?.size ?? -1))).toBeLessThan(0.01);
        }
      }
    },
  );

  test('every letter has its own place, wide word spaces and all', () => {
    const [, page] = previewer(orderOf([rich])).document.sides;
    const line = page?.marks.find((mark) => mark.kind === 'text');
    if (line?.kind !== 'text') throw new Error('There is no text.');
    expect(line.xs).toHaveLength(line.text.length);
    expect([...line.xs].sort((one, other) => one - other)).toEqual(line.xs);
    const width = (at: number) => (line.xs[at + 1] ?? 0) - (line.xs[at] ?? 0);
    const space = line.text.indexOf(' ');
    // Andika's space is 0.315 of the size wide; a finger's is 1.7 times that.
    expect(width(space) / line.size).toBeGreaterThan(0.45);
  });

  test('pictures fill the same rectangles', () => {
    const pictures = {
      'dots.png': smallPng({ width: 30, height: 20, colour: 2, sample: (x, y) => 9 * x + y }),
    };
    const order = orderOf([
      storyToPrint(['![Dots](dots.png)\nThe sun.', '![A hill](hill.svg)\nA hat.'], { pictures }),
    ]);
    const inPdf = readPdf(printed('book', order.stories).bytes).sides;
    const { document } = previewer(order);
    for (const [index, side] of document.sides.entries()) {
      const drawn = side.marks.filter((mark) => mark.kind === 'picture');
      expect(drawn).toHaveLength(inPdf[index]?.pictures.length ?? -1);
      for (const [at, { x, y, width, height }] of drawn.entries()) {
        const place = inPdf[index]?.pictures[at];
        const found = [
          place?.left,
          side.height - (place?.top ?? 0),
          place?.right,
          side.height - (place?.bottom ?? 0),
        ];
        for (const [edge, value] of [x, y, x + width, y + height].entries())
          expect(Math.abs(value - (found[edge] ?? -1))).toBeLessThan(0.05);
      }
    }
  });
});

const seen = (material: Material, pages: readonly string[], wish: StoryWish = {}) =>
  previewer({ ...orderOf([storyToPrint(pages, wish)]), material });

test('a letter that the face lacks is an empty box and a problem, never a letter of another face', () => {
  const { document, problems } = seen('book', ['The 鸭 sat.']);
  const texts = document.sides.flatMap(({ marks }) =>
    marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])),
  );
  expect(texts.join('|')).toContain('The | sat.');
  expect(problems.map(({ message }) => message).join()).toContain('U+9E2D');
});

test('a side says what is read on it: the text, and what stands in for pictures', () => {
  const { sides } = seen('book', ['![A hill](hill.svg)\nThe sun is hot.']).document;
  const labels = sides.map((side, index) => labelOf(side, index, sides.length));
  expect(labels[0]).toMatch(/^Page 1 of 2: .*The Red Box.*Lesson 2/);
  expect(labels[1]).toBe('Page 2 of 2: A hill The sun is hot.');
});

test('a picture is handed out as it was read; a drawing as the paths that are printed', () => {
  const png = smallPng({ width: 3, height: 2, colour: 2, sample: (x, y) => 9 * x + y });
  const preview = seen('book', ['![Dots](dots.png)\nThe sun.', '![A hill](hill.svg)\nA hat.'], {
    pictures: { 'dots.png': png },
  });
  expect(preview.pictureAt('dots.png')).toEqual({ type: 'image/png', bytes: png });
  const hill = preview.pictureAt('hill.svg');
  expect(hill?.type).toBe('image/svg+xml');
  const svg = Buffer.from(hill?.bytes ?? []).toString();
  expect(svg.match(/<path/g)?.length).toBe(hillPicture.match(/<(rect|circle|path)/g)?.length);
  expect(svg.split('<g ').length).toBe(svg.split('</g>').length);
  expect(preview.pictureAt('none.png')).toBeUndefined();
});
