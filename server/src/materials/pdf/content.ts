import type { BoxMark, DrawnMark, Ink, LineMark, PictureMark, Side, TextMark } from './drawing.ts';
import { hex, pdfNumber, pdfNumbers } from './serialize.ts';
import type { StructureNode } from './structure.ts';
import { glyphRuns } from './typeface.ts';
import type { Extent, Resources } from './write-document.ts';

/** The drawing operators of one side of a sheet, every mark of it tagged or set off as decoration. */
export function sideContent(side: Side, index: number, resources: Resources): string {
  const operators: string[] = [];
  let open: { readonly node: StructureNode | undefined } | undefined;
  const close = (): void => {
    if (open !== undefined) operators.push('EMC');
    open = undefined;
  };
  for (const { page, x, y } of side.pages) {
    // From the page's upper left corner, `y` downwards, to the sheet's lower left one, `y` upwards.
    const place: Place = { x: (across) => x + across, y: (down) => side.height - y - down };
    for (const mark of page.marks) {
      if (open === undefined || open.node !== mark.node) {
        close();
        operators.push(
          mark.node === undefined
            ? '/Artifact BMC'
            : `/${mark.node.type} << /MCID ${resources.contentOf(mark.node, index)} >> BDC`,
        );
        open = { node: mark.node };
      }
      if (mark.node?.type === 'Figure') resources.enclose(mark.node, extentOf(mark, place));
      operators.push(markOperators(mark, place, resources));
    }
    close();
  }
  return operators.join('\n');
}

/** The rectangle that a mark fills on the sheet; of text, its base line. */
function extentOf(mark: DrawnMark, place: Place): Extent {
  const [x, y, width, height] =
    mark.kind === 'line'
      ? [...mark.from, mark.to[0] - mark.from[0], mark.to[1] - mark.from[1]]
      : mark.kind === 'text'
        ? [mark.x, mark.y, 0, 0]
        : [mark.x, mark.y, mark.width, mark.height];
  return [place.x(x), place.y(y + height), place.x(x + width), place.y(y)];
}

/** Where a point of a page lies on the side of the sheet. */
interface Place {
  x(across: number): number;
  y(down: number): number;
}

function markOperators(mark: DrawnMark, place: Place, resources: Resources): string {
  switch (mark.kind) {
    case 'text':
      return textOperators(mark, place, resources);
    case 'box':
      return boxOperators(mark, place);
    case 'line':
      return lineOperators(mark, place);
    case 'picture':
      return pictureOperators(mark, place, resources);
  }
}

function textOperators(mark: TextMark, place: Place, resources: Resources): string {
  const { text, face, size, x, y, ink, wordSpace } = mark;
  const shown = glyphRuns(text, face).map(({ font, glyphs }) => {
    const used = resources.fontFor(font);
    let row = '';
    let string = '';
    for (const { glyph, codePoint } of glyphs) {
      if (!used.characters.has(glyph)) used.characters.set(glyph, codePoint);
      string += hex(glyph, 4);
      if (codePoint === 0x20 && wordSpace !== 1) {
        const wider = ((wordSpace - 1) * font.advanceOf(glyph) * 1000) / font.unitsPerEm;
        row += `<${string}> ${pdfNumber(-wider)} `;
        string = '';
      }
    }
    if (string !== '') row += `<${string}>`;
    return `/${used.name} ${pdfNumber(size)} Tf [${row.trim()}] TJ`;
  });
  return `BT ${colour(ink, 'rg')} 1 0 0 1 ${pdfNumbers(place.x(x), place.y(y))} Tm ${shown.join(' ')} ET`;
}

function boxOperators(
  { x, y, width, height, radius, fill, stroke, lineWidth, dash }: BoxMark,
  place: Place,
): string {
  const left = place.x(x);
  const top = place.y(y);
  const outline =
    radius === 0
      ? `${pdfNumbers(left, top - height, width, height)} re`
      : roundOutline(left, top, left + width, top - height, radius);
  const paint = fill === undefined ? 'S' : stroke === undefined ? 'f' : 'B';
  return [
    'q',
    ...(fill === undefined ? [] : [colour(fill, 'rg')]),
    ...(stroke === undefined ? [] : [colour(stroke, 'RG'), penOperators(lineWidth, dash)]),
    outline,
    paint,
    'Q',
  ].join(' ');
}

/** A rectangle with quarter circles at its corners, each near enough a cubic curve. */
function roundOutline(left: number, top: number, right: number, bottom: number, radius: number): string {
  const pull = radius * 0.4477;
  return [
    `${pdfNumbers(left + radius, top)} m ${pdfNumbers(right - radius, top)} l`,
    `${pdfNumbers(right - pull, top, right, top - pull, right, top - radius)} c`,
    `${pdfNumbers(right, bottom + radius)} l`,
    `${pdfNumbers(right, bottom + pull, right - pull, bottom, right - radius, bottom)} c`,
    `${pdfNumbers(left + radius, bottom)} l`,
    `${pdfNumbers(left + pull, bottom, left, bottom + pull, left, bottom + radius)} c`,
    `${pdfNumbers(left, top - radius)} l`,
    `${pdfNumbers(left, top - pull, left + pull, top, left + radius, top)} c h`,
  ].join(' ');
}

function lineOperators({ from, to, ink, lineWidth, dash }: LineMark, place: Place): string {
  const start = pdfNumbers(place.x(from[0]), place.y(from[1]));
  const end = pdfNumbers(place.x(to[0]), place.y(to[1]));
  return `q ${colour(ink, 'RG')} ${penOperators(lineWidth, dash)} ${start} m ${end} l S Q`;
}

function pictureOperators(
  { picture, x, y, width, height }: PictureMark,
  place: Place,
  resources: Resources,
): string {
  const name = resources.pictureFor(picture);
  const corner = pdfNumbers(place.x(x), place.y(y + height));
  if (picture.kind === 'vector') {
    const scale = [width / picture.width, height / picture.height].map((value) => value.toFixed(6));
    return `q ${scale[0]} 0 0 ${scale[1]} ${corner} cm /${name} Do Q`;
  }
  return `q ${pdfNumber(width)} 0 0 ${pdfNumber(height)} ${corner} cm ${picture.turn.join(' ')} cm /${name} Do Q`;
}

function penOperators(lineWidth: number, dash: readonly number[]): string {
  return `${pdfNumber(lineWidth)} w [${pdfNumbers(...dash)}] 0 d`;
}

function colour(ink: Ink, operator: 'rg' | 'RG'): string {
  return `${pdfNumbers(...ink)} ${operator}`;
}
