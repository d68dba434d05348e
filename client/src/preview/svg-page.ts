import type { ShownMark, ShownSide } from '../../../server/src/materials/preview/shown-document.ts';

/** An element of a drawing before it is made. */
export interface SvgElement {
  readonly tag: 'rect' | 'text' | 'line' | 'image';
  readonly attributes: Readonly<Record<string, string>>;
  readonly text?: string;
  /** Of an image: the address of the picture it shows, as the story writes it. */
  readonly address?: string;
}

/** The elements that draw a side of paper: its marks, each letter at the place it has in print. */
export function svgElements({ marks }: ShownSide): readonly SvgElement[] {
  return marks.map(svgElement);
}

function svgElement(mark: ShownMark): SvgElement {
  switch (mark.kind) {
    case 'text':
      return {
        tag: 'text',
        text: mark.text,
        attributes: {
          x: mark.xs.join(' '),
          y: String(mark.y),
          'font-family': mark.font,
          'font-size': String(mark.size),
          fill: mark.ink,
        },
      };
    case 'box': {
      const { x, y, width, height, radius, fill = 'none', stroke, lineWidth, dash } = mark;
      const corners = radius === 0 ? {} : { rx: String(radius) };
      const pen = stroke === undefined ? {} : penOf(stroke, lineWidth, dash);
      return { tag: 'rect', attributes: { ...placeOf({ x, y, width, height }), ...corners, fill, ...pen } };
    }
    case 'line': {
      const [[x1, y1], [x2, y2]] = [mark.from, mark.to];
      const ends = { x1: String(x1), y1: String(y1), x2: String(x2), y2: String(y2) };
      return { tag: 'line', attributes: { ...ends, ...penOf(mark.ink, mark.lineWidth, mark.dash) } };
    }
    case 'picture':
      return {
        tag: 'image',
        address: mark.address,
        attributes: { ...placeOf(mark), preserveAspectRatio: 'none' },
      };
  }
}

function placeOf(place: {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}): Readonly<Record<string, string>> {
  const { x, y, width, height } = place;
  return { x: String(x), y: String(y), width: String(width), height: String(height) };
}

function penOf(ink: string, lineWidth: number, dash: readonly number[]): Readonly<Record<string, string>> {
  const dashes = dash.length === 0 ? {} : { 'stroke-dasharray': dash.join(' ') };
  return { stroke: ink, 'stroke-width': String(lineWidth), ...dashes };
}

/** What a screen reader says of a side: its number and all that is read on it. */
export function labelOf({ reading }: ShownSide, index: number, count: number): string {
  const head = `Page ${index + 1} of ${count}`;
  return reading.length === 0 ? `${head}, empty` : `${head}: ${reading.join(' ')}`;
}
