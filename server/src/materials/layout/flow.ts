import type { Ink } from '../pdf/drawing.ts';
import { StructureNode, type StructureType } from '../pdf/structure.ts';
import { type Typeface, widthOf } from '../pdf/typeface.ts';
import type { Faces } from './faces.ts';
import { inks, PageMaker } from './page-maker.ts';
import type { Size } from './paper.ts';

/** A stretch of a paragraph in one weight. */
export interface Piece {
  readonly text: string;
  readonly isBold?: boolean;
}

/** How a paragraph is set. Lengths are in points. */
export interface ParagraphLook {
  readonly size?: number;
  readonly ink?: Ink;
  /** From the left margin. */
  readonly indent?: number;
  /** Kept free before the right margin. */
  readonly outdent?: number;
  readonly type?: StructureType;
  readonly spaceAfter?: number;
  readonly wordSpace?: number;
  /** From base line to base line, in letter sizes. */
  readonly leading?: number;
}

/** Text that runs from page to page, with a line at the foot of each. Lengths are in points. */
export class Flow {
  readonly faces: Faces;
  readonly node: StructureNode;
  readonly size: Size;
  readonly side = 60;
  readonly #top = 58;
  readonly #bottom = 62;
  readonly #foot: string;
  readonly #pages: PageMaker[] = [];
  /** Where the next thing begins. */
  y = 0;

  constructor(size: Size, faces: Faces, node: StructureNode, foot: string) {
    this.size = size;
    this.faces = faces;
    this.node = node;
    this.#foot = foot;
    this.startPage();
  }

  /** The page that is being set. */
  get page(): PageMaker {
    return this.#pages.at(-1) ?? this.startPage();
  }

  /** Width between the margins. */
  get width(): number {
    return this.size.width - 2 * this.side;
  }

  /** Height between the margins of an empty page. */
  get room(): number {
    return this.size.height - this.#top - this.#bottom;
  }

  /** Goes on at the head of a new page. */
  startPage(): PageMaker {
    const page = new PageMaker(this.size);
    this.#pages.push(page);
    this.y = this.#top;
    return page;
  }

  /** Makes sure that something of this height is not torn apart, if it fits on a page at all. */
  keep(height: number): void {
    if (this.y > this.#top && this.y + height > this.size.height - this.#bottom) this.startPage();
  }

  /** Draws something in one piece, on a new page if need be; on pages of its own when it is longer than one. */
  together(draw: (flow: Flow) => void): void {
    const trial = new Flow(
      { width: this.size.width, height: 1e6 },
      this.faces,
      new StructureNode('Part'),
      '',
    );
    const start = trial.y;
    draw(trial);
    const height = trial.y - start;
    if (height <= this.room) this.keep(height);
    draw(this);
  }

  /** Leaves room. */
  skip(height: number): void {
    this.y += height;
  }

  /** A heading of the document (1) or of a part of it (2), kept with at least `follows` points of what comes after. */
  heading(text: string, level: 1 | 2, follows = 60): void {
    const size = level === 1 ? 24 : 15;
    if (level === 2 && this.y > this.#top) this.skip(14);
    this.keep(size * 1.6 + follows);
    this.paragraph([{ text, isBold: true }], {
      size,
      type: level === 1 ? 'H1' : 'H2',
      spaceAfter: level === 1 ? 2 : 6,
    });
  }

  /** A paragraph, broken between words. */
  paragraph(pieces: readonly Piece[], look: ParagraphLook = {}): void {
    const { size = 11.5, ink = inks.text, indent = 0, outdent = 0, wordSpace = 1, leading = 1.5 } = look;
    const node = this.node.add(look.type ?? 'P');
    const lines = this.#broken(pieces, this.width - indent - outdent, size, wordSpace);
    if (lines.length <= 5) this.keep(lines.length * size * leading);
    for (const line of lines) {
      this.keep(size * leading);
      this.y += size * (0.5 * leading + 0.36);
      let x = this.side + indent;
      for (const { text, face } of line) {
        x += this.page.text(text, x, this.y, { face, size, ink, wordSpace, node });
      }
      this.y += size * (0.5 * leading - 0.36);
    }
    this.skip(look.spaceAfter ?? 0);
  }

  /** A label at the left and its paragraph beside it. */
  row(label: string, pieces: readonly Piece[], labelWidth = 164): void {
    this.keep(18);
    const { y } = this;
    const page = this.page;
    page.text(label, this.side, y + 12.8, {
      face: this.faces.regular,
      size: 11.5,
      ink: inks.quiet,
      node: this.node.add('P'),
    });
    this.paragraph(pieces, { indent: labelWidth, spaceAfter: 3 });
  }

  /** The pages, each with its foot line. */
  finish(): readonly PageMaker[] {
    const face = this.faces.regular;
    for (const [index, page] of this.#pages.entries()) {
      const y = this.size.height - 36;
      page.text(this.#foot, this.side, y, { face, size: 9, ink: inks.quiet });
      page.text(String(index + 1), this.size.width - this.side, y, {
        face,
        size: 9,
        ink: inks.quiet,
        anchor: 'end',
      });
    }
    return this.#pages;
  }

  #broken(pieces: readonly Piece[], width: number, size: number, wordSpace: number): readonly SetLine[] {
    const lines: SetLine[] = [];
    let line: { text: string; face: Typeface }[] = [];
    let length = 0;
    const space = widthOf(' ', this.faces.regular, size, wordSpace);
    const words = pieces.flatMap(({ text, isBold }) => {
      const face = isBold === true ? this.faces.bold : this.faces.regular;
      return (text.match(/\s+|\S+/g) ?? []).map((word) => ({ text: word, face }));
    });
    // What is not separated by a space stays together, also where the weight changes.
    const groups: { text: string; face: Typeface }[][] = [];
    for (const word of words) {
      if (/^\s/.test(word.text)) groups.push([]);
      else if (groups.length === 0) groups.push([word]);
      else groups.at(-1)?.push(word);
    }
    for (const group of groups.filter((each) => each.length > 0)) {
      const wide = group.reduce((sum, { text, face }) => sum + widthOf(text, face, size), 0);
      if (line.length > 0 && length + space + wide > width) {
        lines.push(line);
        line = [];
        length = 0;
      }
      if (line.length > 0) {
        line.push({ text: ' ', face: this.faces.regular });
        length += space;
      }
      line.push(...group);
      length += wide;
    }
    if (line.length > 0) lines.push(line);
    return lines.map(joined);
  }
}

type SetLine = readonly { readonly text: string; readonly face: Typeface }[];

/** Neighbours in one face as one stretch. */
function joined(line: SetLine): SetLine {
  const stretches: { text: string; face: Typeface }[] = [];
  for (const { text, face } of line) {
    const last = stretches.at(-1);
    if (last !== undefined && (last.face === face || text === ' ')) last.text += text;
    else stretches.push({ text, face });
  }
  return stretches;
}
