import type { LaidOut } from '../layout/laid-out.ts';
import type { DrawnMark, Ink, Side, TextMark } from '../pdf/drawing.ts';
import type { StructureNode } from '../pdf/structure.ts';
import { glyphRuns } from '../pdf/typeface.ts';
import type { ShownBox, ShownDocument, ShownMark, ShownSide, ShownText } from './shown-document.ts';

/** A laid-out document as plain data: the same marks at the same places as in the PDF. */
export function showDocument({ document: { title, sides }, addresses }: LaidOut): ShownDocument {
  return { title, sides: sides.map((side) => showSide(side, addresses)) };
}

type Addresses = LaidOut['addresses'];

function showSide({ width, height, pages }: Side, addresses: Addresses): ShownSide {
  return {
    width,
    height,
    marks: pages.flatMap(({ page, x, y }) =>
      page.marks.flatMap((mark) => showMark(mark, { x, y }, addresses)),
    ),
    reading: readingOf(pages.flatMap(({ page }) => page.marks)),
  };
}

interface Corner {
  readonly x: number;
  readonly y: number;
}

function showMark(mark: DrawnMark, corner: Corner, addresses: Addresses): readonly ShownMark[] {
  switch (mark.kind) {
    case 'text':
      return showText(mark, corner);
    case 'box': {
      const { fill, stroke, node: _, ...box } = mark;
      return [
        {
          ...box,
          x: rounded(corner.x + mark.x),
          y: rounded(corner.y + mark.y),
          ...(fill === undefined ? {} : { fill: colour(fill) }),
          ...(stroke === undefined ? {} : { stroke: colour(stroke) }),
        },
      ];
    }
    case 'line': {
      const { lineWidth, dash, ink } = mark;
      const moved = ([x, y]: readonly [number, number]) =>
        [rounded(corner.x + x), rounded(corner.y + y)] as const;
      return [
        { kind: 'line', from: moved(mark.from), to: moved(mark.to), ink: colour(ink), lineWidth, dash },
      ];
    }
    case 'picture': {
      const { picture, x, y, width, height } = mark;
      const address = addresses.get(picture) ?? '';
      return [
        { kind: 'picture', address, x: rounded(corner.x + x), y: rounded(corner.y + y), width, height },
      ];
    }
  }
}

/** Runs of one font, each letter at its place; a letter that the face lacks is an empty box, as in print. */
function showText(
  { text, face, size, x, y, ink, wordSpace }: TextMark,
  corner: Corner,
): readonly ShownMark[] {
  const marks: ShownMark[] = [];
  let pen = corner.x + x;
  for (const { font, glyphs } of glyphRuns(text, face)) {
    let run = '';
    let xs: number[] = [];
    const finish = (): void => {
      if (run !== '') marks.push(textMark(run, xs));
      run = '';
      xs = [];
    };
    const textMark = (stretch: string, places: readonly number[]): ShownText => ({
      kind: 'text',
      text: stretch,
      font: font.name,
      size,
      xs: places,
      y: rounded(corner.y + y),
      ink: colour(ink),
    });
    for (const { glyph, codePoint } of glyphs) {
      const advance = (font.advanceOf(glyph) / font.unitsPerEm) * size * (codePoint === 0x20 ? wordSpace : 1);
      if (glyph === 0) {
        finish();
        marks.push(emptyBox(pen, corner.y + y, advance, (font.capHeight / font.unitsPerEm) * size, ink));
      } else {
        const character = String.fromCodePoint(codePoint);
        run += character;
        for (let unit = 0; unit < character.length; unit++) xs.push(rounded(pen));
      }
      pen += advance;
    }
    finish();
  }
  return marks;
}

function emptyBox(x: number, y: number, advance: number, height: number, ink: Ink): ShownBox {
  return {
    kind: 'box',
    x: rounded(x + 0.1 * advance),
    y: rounded(y - height),
    width: rounded(0.8 * advance),
    height: rounded(height),
    radius: 0,
    stroke: colour(ink),
    lineWidth: 1,
    dash: [],
  };
}

/** What is read aloud, in the order of the pages: each node's lines together, a figure by what stands in for it. */
function readingOf(marks: readonly DrawnMark[]): readonly string[] {
  const lines = new Map<StructureNode, string[]>();
  for (const mark of marks) {
    const { node } = mark;
    if (node === undefined) continue;
    const known = lines.get(node) ?? [];
    lines.set(node, known);
    if (mark.kind === 'text' && node.type !== 'Figure') known.push(mark.text);
  }
  return [...lines].flatMap(([node, texts]) => {
    const said = node.type === 'Figure' ? (node.alternative ?? '') : texts.join(' ').replace(/\s+/g, ' ');
    return said.trim() === '' ? [] : [said.trim()];
  });
}

function colour(ink: Ink): string {
  return `#${ink
    .map((share) =>
      Math.round(share * 255)
        .toString(16)
        .padStart(2, '0'),
    )
    .join('')}`;
}

function rounded(value: number): number {
  return Math.round(value * 1000) / 1000;
}
