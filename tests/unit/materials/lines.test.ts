import { describe, expect, test } from 'vitest';
import { readFaces } from '../../../server/src/materials/layout/faces.ts';
import { brokenLines, wordsTooWide } from '../../../server/src/materials/layout/lines.ts';
import { widthOf } from '../../../server/src/materials/pdf/typeface.ts';
import { packageFonts } from '../../support/package-fonts.ts';

const face = readFaces(packageFonts).regular;
const style = { face, size: 20, wordSpace: 1.8 };

describe('lines', () => {
  test.each([
    ['The net is red.', 300, ['The net is red.']],
    ['The net is red and the box is big and wet.', 260, ['The net is red and the', 'box is big and wet.']],
    ['One two three four five', 165, ['One two three', 'four five']],
    ['A supercalifragilistic net', 100, ['A', 'supercalifragilistic', 'net']],
    ['The dogs’ bowl — it is big', 150, ['The dogs’', 'bowl —', 'it is big']],
    ['', 100, []],
  ])('of “%s” in %i points', (text, width, lines) => {
    expect(brokenLines(text, width, style)).toEqual(lines);
  });

  test('are never wider than they may be, unless a single word is', () => {
    const text = 'Tam and Nod ran up the hill and sat in the sun with a big red box of buns and jam';
    for (let width = 90; width < 700; width += 13) {
      const lines = brokenLines(text, width, style);
      expect(lines.join(' ')).toBe(text);
      for (const line of lines) expect(widthOf(line, face, 20, 1.8)).toBeLessThanOrEqual(width);
    }
  });

  test('name the words that are too wide for them', () => {
    expect(wordsTooWide('A supercalifragilistic net', 100, style)).toEqual(['supercalifragilistic']);
  });
});

test('f and i stay two letters: no ligature', () => {
  expect(widthOf('fi', face, 100)).toBeCloseTo(widthOf('f', face, 100) + widthOf('i', face, 100), 6);
});
