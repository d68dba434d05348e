import { inflateSync } from 'node:zlib';

/** A line of text as it stands on a side of paper: points from the lower left corner. */
export interface ReadText {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly width: number;
  /** The number of the marked content it belongs to; absent for decoration. */
  readonly content?: number;
}

/** A rectangle that a picture fills, in points from the lower left corner. */
export interface ReadPicture {
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  readonly top: number;
}

/** A side of paper. */
export interface ReadSide {
  readonly width: number;
  readonly height: number;
  readonly texts: readonly ReadText[];
  readonly pictures: readonly ReadPicture[];
  /** Operators that paint and stand in no marked content: a tagged document has none. */
  readonly untagged: number;
}

/** A node of the structure with the text of its own content. */
export interface ReadNode {
  readonly type: string;
  readonly alternative?: string;
  readonly text: string;
  readonly children: readonly ReadNode[];
}

/** A PDF as an independent reader finds it. */
export interface ReadPdf {
  readonly title: string;
  readonly language: string;
  readonly isMarked: boolean;
  readonly fonts: readonly string[];
  readonly sides: readonly ReadSide[];
  readonly structure: ReadNode;
  /** Numbers of marked content, by side, that no node of the structure claims. */
  readonly unclaimed: readonly string[];
}

/** Reads the kind of PDF that Battledore writes: no object streams, Flate or plain streams, Identity-H fonts. */
export function readPdf(bytes: Uint8Array): ReadPdf {
  const file = new PdfReader(bytes);
  const trailer = file.after('trailer');
  const catalog = file.dictionary(reference(trailer, 'Root'));
  const information = file.dictionary(reference(trailer, 'Info'));
  const pageObjects = references(
    /\/Kids \[([^\]]*)\]/.exec(file.dictionary(reference(catalog, 'Pages')))?.[1] ?? '',
  );
  const fonts = new Map<string, ReadFont>();
  const sides = pageObjects.map((object) => readSide(file, file.dictionary(object), fonts));
  const claimed = new Set<string>();
  const root = file.dictionary(reference(catalog, 'StructTreeRoot'));
  const top = references(/\/K \[([^\]]*)\]/.exec(root)?.[1] ?? '')[0] ?? 0;
  const structure = readNode(file, top, { sides, pageObjects, claimed });
  const unclaimed = sides.flatMap(({ texts }, side) =>
    texts.flatMap(({ content }) =>
      content === undefined || claimed.has(`${side} ${content}`) ? [] : [`${side} ${content}`],
    ),
  );
  return {
    title: textOf(information, 'Title'),
    language: /\/Lang \(([^)]*)\)/.exec(catalog)?.[1] ?? '',
    isMarked: catalog.includes('/MarkInfo << /Marked true >>'),
    fonts: [...fonts.values()].map(({ name }) => name),
    sides,
    structure,
    unclaimed,
  };
}

class PdfReader {
  readonly #text: string;
  readonly #bytes: Uint8Array;
  readonly #offsets: readonly number[];

  constructor(bytes: Uint8Array) {
    this.#bytes = bytes;
    this.#text = Buffer.from(bytes).toString('latin1');
    const table = Number(/startxref\n(\d+)\n%%EOF\n$/.exec(this.#text)?.[1]);
    if (!this.#text.startsWith('xref\n', table))
      throw new Error('The cross-reference table is not where it is said to be.');
    const rows =
      this.#text.slice(table, this.#text.indexOf('trailer', table)).match(/\d{10} \d{5} [nf]/g) ?? [];
    this.#offsets = rows.map((row) => Number(row.slice(0, 10)));
  }

  after(keyword: string): string {
    return this.#text.slice(this.#text.lastIndexOf(keyword));
  }

  /** An object up to its stream, if it has one. */
  dictionary(object: number): string {
    const start = this.#offsets[object] ?? -1;
    const head = `${object} 0 obj\n`;
    if (!this.#text.startsWith(head, start))
      throw new Error(`Object ${object} is not where it is said to be.`);
    const stream = this.#text.indexOf('\nstream\n', start);
    const end = this.#text.indexOf('\nendobj', start);
    return this.#text.slice(start + head.length, stream !== -1 && stream < end ? stream : end);
  }

  stream(object: number): string {
    const dictionary = this.dictionary(object);
    const start =
      (this.#offsets[object] ?? 0) + `${object} 0 obj\n`.length + dictionary.length + '\nstream\n'.length;
    const data = this.#bytes.subarray(start, start + Number(/\/Length (\d+)/.exec(dictionary)?.[1]));
    return (dictionary.includes('/FlateDecode') ? inflateSync(data) : Buffer.from(data)).toString('latin1');
  }
}

interface ReadFont {
  readonly name: string;
  readonly characters: ReadonlyMap<number, string>;
  readonly widths: ReadonlyMap<number, number>;
}

function readFont(file: PdfReader, object: number): ReadFont {
  const font = file.dictionary(object);
  const descendant = file.dictionary(Number(/\/DescendantFonts \[(\d+)/.exec(font)?.[1]));
  const map = file.stream(reference(font, 'ToUnicode'));
  const characters = new Map<number, string>();
  for (const [, glyph = '', units = ''] of map.matchAll(/<([0-9A-F]{4})> <([0-9A-F]{4,8})>\n/g)) {
    characters.set(Number.parseInt(glyph, 16), unitsOf(units));
  }
  const widths = new Map<number, number>();
  for (const [, glyph, width] of descendant.matchAll(/(\d+) \[([\d.]+)\]/g))
    widths.set(Number(glyph), Number(width));
  return { name: /\/BaseFont \/(\S+)/.exec(font)?.[1] ?? '', characters, widths };
}

function readSide(file: PdfReader, page: string, fonts: Map<string, ReadFont>): ReadSide {
  const resources = file.dictionary(reference(page, 'Resources'));
  const fontOf = (name: string): ReadFont => {
    const known = fonts.get(name) ?? readFont(file, reference(resources, name));
    fonts.set(name, known);
    return known;
  };
  const [width = 0, height = 0] = (/\/MediaBox \[0 0 ([\d. ]+)\]/.exec(page)?.[1] ?? '')
    .split(' ')
    .map(Number);
  const texts: ReadText[] = [];
  const pictures: ReadPicture[] = [];
  let untagged = 0;
  let content: number | undefined | 'none' = 'none';
  let place = { x: 0, y: 0 };
  let font: ReadFont | undefined;
  let size = 0;
  const operands: string[] = [];
  let matrix = [1, 0, 0, 1, 0, 0];
  const saved: number[][] = [];
  const tokens =
    file.stream(reference(page, 'Contents')).match(/<<.*?>>|\[[^\]]*\]|<[0-9A-F]*>|[^\s[\]<>]+/g) ?? [];
  for (const token of tokens) {
    const numbers = operands.map(Number);
    switch (token) {
      case 'BMC':
        content = undefined;
        break;
      case 'BDC':
        content = Number(/\/MCID (\d+)/.exec(operands.at(-1) ?? '')?.[1]);
        break;
      case 'EMC':
        content = 'none';
        break;
      case 'q':
        saved.push(matrix);
        break;
      case 'Q':
        matrix = saved.pop() ?? matrix;
        break;
      case 'cm':
        if (saved.length > 0 && matrix.every((value, index) => value === [1, 0, 0, 1, 0, 0][index]))
          matrix = numbers;
        break;
      case 'Tm':
        place = { x: numbers[4] ?? 0, y: numbers[5] ?? 0 };
        break;
      case 'Tf':
        font = fontOf((operands[0] ?? '').slice(1));
        size = numbers[1] ?? 0;
        break;
      case 'TJ': {
        if (content === 'none') untagged++;
        const shown = shownText(operands[0] ?? '', font, size);
        texts.push({ ...shown, ...place, size, ...(typeof content === 'number' ? { content } : {}) });
        place = { ...place, x: place.x + shown.width };
        break;
      }
      case 'Do': {
        if (content === 'none') untagged++;
        const [a = 1, , , d = 1, left = 0, bottom = 0] = matrix;
        const form = file.dictionary(reference(resources, (operands[0] ?? '').slice(1)));
        const box = (/\/BBox \[0 0 ([\d. ]+)\]/.exec(form)?.[1] ?? '1 1').split(' ').map(Number);
        pictures.push({ left, bottom, right: left + a * (box[0] ?? 1), top: bottom + d * (box[1] ?? 1) });
        break;
      }
      case 'S':
      case 'f':
      case 'B':
        if (content === 'none') untagged++;
        break;
      default:
        if (!/^[A-Za-z]+\*?$/.test(token)) {
          operands.push(token);
          continue;
        }
    }
    operands.length = 0;
  }
  return { width, height, texts, pictures, untagged };
}

function shownText(array: string, font: ReadFont | undefined, size: number): { text: string; width: number } {
  let text = '';
  let width = 0;
  for (const [, glyphs, gap] of array.matchAll(/<([0-9A-F]*)>|(-?[\d.]+)/g)) {
    if (gap !== undefined) width -= Number(gap);
    for (const four of glyphs?.match(/.{4}/g) ?? []) {
      const glyph = Number.parseInt(four, 16);
      text += font?.characters.get(glyph) ?? '\ufffd';
      width += font?.widths.get(glyph) ?? 0;
    }
  }
  return { text, width: (width * size) / 1000 };
}

interface Marked {
  readonly sides: readonly ReadSide[];
  readonly pageObjects: readonly number[];
  readonly claimed: Set<string>;
}

function readNode(file: PdfReader, object: number, marked: Marked): ReadNode {
  const node = file.dictionary(object);
  const kids = node.slice(node.indexOf('/K [') + 4);
  const text = [...kids.matchAll(/\/Pg (\d+) 0 R \/MCID (\d+)/g)]
    .flatMap(([, page, number]) => {
      const side = marked.pageObjects.indexOf(Number(page));
      marked.claimed.add(`${side} ${number}`);
      return (marked.sides[side]?.texts ?? []).filter(({ content }) => content === Number(number));
    })
    .map((each) => each.text)
    .join('\n');
  const children = references(kids.replace(/<<.*?>>/g, '')).map((kid) => readNode(file, kid, marked));
  const alternative = textOf(node, 'Alt');
  return {
    type: /\/S \/(\w+)/.exec(node)?.[1] ?? '',
    ...(alternative === '' ? {} : { alternative }),
    text,
    children,
  };
}

function reference(dictionary: string, key: string): number {
  const found = new RegExp(`/${key} (\\d+) 0 R`).exec(dictionary)?.[1];
  if (found === undefined) throw new Error(`There is no /${key}.`);
  return Number(found);
}

function references(list: string): readonly number[] {
  return [...list.matchAll(/(\d+) 0 R/g)].map(([, object]) => Number(object));
}

function textOf(dictionary: string, key: string): string {
  const found = new RegExp(`/${key} (?:\\(((?:[^\\\\)]|\\\\.)*)\\)|<FEFF([0-9A-F]*)>)`).exec(dictionary);
  return found?.[2] !== undefined ? unitsOf(found[2]) : (found?.[1] ?? '').replace(/\\(.)/g, '$1');
}

function unitsOf(hexadecimal: string): string {
  return (hexadecimal.match(/.{4}/g) ?? [])
    .map((four) => String.fromCharCode(Number.parseInt(four, 16)))
    .join('');
}
