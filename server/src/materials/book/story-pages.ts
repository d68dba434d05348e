import { wordsTooWide } from '../layout/lines.ts';
import { fitted, inks, PageMaker } from '../layout/page-maker.ts';
import type { Size } from '../layout/paper.ts';
import type { Studio, StudioStory } from '../layout/studio.ts';
import type { DrawnPage } from '../pdf/drawing.ts';
import type { StructureNode } from '../pdf/structure.ts';
import type { Picture } from '../pictures/picture.ts';
import { alternativeOf, type BookPage, bookPages } from './book-pages.ts';
import {
  type BookStyle,
  childStyle,
  footHeight,
  heightOf,
  leading,
  measureOf,
  type SetText,
  setText,
  sizeFor,
  smallestSize,
} from './book-style.ts';

/** What setting the pages of a story needs. */
export interface StorySetting {
  readonly studio: Studio;
  readonly story: StudioStory;
  readonly style: BookStyle;
  readonly node: StructureNode;
  /** The number of the story's first page of text. */
  readonly firstNumber: number;
}

/** Sets the pages of a story that follow its title page. Text that is too long for its page goes on on further ones. */
export function storyPages({ studio, story, style, node, firstNumber }: StorySetting): readonly DrawnPage[] {
  const face = studio.faces.regular;
  const pages = bookPages(story);
  const width = measureOf(style);
  const size = sizeFor(
    pages.map(({ sentences }) => sentences),
    face,
    style,
  );
  const look = childStyle(face, size);
  for (const { sentences, placed } of pages) {
    for (const word of sentences.flat().flatMap((line) => wordsTooWide(line, width, look))) {
      const span = { start: placed.start, end: placed.start + placed.page.source.length };
      story.problem(`“${word}” is too long for a line of ${smallestSize}-point letters.`, span);
    }
  }
  const text = pages.map(({ sentences }) => setText(sentences, width, look));
  const common = commonTextHeight(text, size, style);
  const [firstPicture] = pages.flatMap(({ illustrations, placed }) =>
    illustrations.flatMap((illustration) => story.picture(illustration, placed.start) ?? []),
  );
  const frame = firstPicture ?? drawingRoom;
  const drawn: PageMaker[] = [];
  for (const [index, page] of pages.entries()) {
    const maker = new PageMaker(style.page);
    const pageNode = node.add('Sect');
    const lines = text[index] ?? [];
    const own = Math.max(common, heightOf(lines, size));
    const picture = pictureZone({ own, common }, page, { story, style, frame });
    // A frame too low to draw in is of no use; a picture that there is stays.
    const hasPicture = page.illustrations.length > 0 || picture.height >= leastFrame * style.leastPicture;
    if (hasPicture) drawPictures(page, picture, { maker, story, node: pageNode });
    const top = hasPicture ? picture.bottom + textGap : style.margins.top;
    let rest = drawText(lines, top, size, { maker, studio, style, node: pageNode });
    drawn.push(maker);
    while (rest.length > 0) {
      const further = new PageMaker(style.page);
      rest = drawText(rest, style.margins.top, size, { maker: further, studio, style, node: pageNode });
      drawn.push(further);
    }
  }
  for (const [index, maker] of drawn.entries()) drawNumber(firstNumber + index, maker, studio, style);
  return drawn;
}

/** The text of nearly all pages fits into this height; a page with more presses its own picture, not those of others. */
function commonTextHeight(text: readonly SetText[], size: number, style: BookStyle): number {
  const heights = text.map((lines) => heightOf(lines, size)).sort((one, other) => one - other);
  const most = 0.34 * style.page.height;
  return Math.min(most, heights[Math.floor((heights.length - 1) * 0.9)] ?? 0);
}

/** Between the picture and the capitals of the first line, in points. */
const textGap = 38;

interface Zone {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly bottom: number;
}

/** The room for a drawing in a story without pictures: as high as looks well above a few lines. */
const drawingRoom: Size = { width: 5, height: 4 };

/**
 * Where the pictures of a page stand. The text beneath begins at the same place on all pages with the same picture
 * format; what is left of the page goes above and below, more below. Only a page with more text than others presses
 * its pictures, first upwards, then in size.
 */
function pictureZone(
  textHeight: { readonly own: number; readonly common: number },
  page: BookPage,
  { story, style, frame }: { story: StudioStory; style: BookStyle; frame: Size },
): Zone {
  const { margins, page: paper } = style;
  const width = measureOf(style);
  const room = paper.height - margins.top - margins.bottom - footHeight - textGap;
  const known = page.illustrations.map((each) => story.picture(each, page.placed.start));
  const across = (width - 14 * Math.max(0, known.length - 1)) / Math.max(1, known.length);
  const heightWithin = (most: number): number =>
    Math.max(
      ...(known.length === 0 ? [undefined] : known).map(
        (picture) => fitted(picture ?? frame, { width: across, height: most }).height,
      ),
    );
  const usual = heightWithin(Math.max(room - textHeight.common, leastShare * style.leastPicture));
  const above = Math.min(0.36 * (room - textHeight.common - usual), 0.11 * paper.height);
  const height = Math.min(
    usual,
    heightWithin(Math.max(room - textHeight.own, leastShare * style.leastPicture)),
  );
  const y = margins.top + Math.max(0, Math.min(above, room - textHeight.own - height));
  return { x: margins.side, y, width, height, bottom: y + height };
}

/** Of the least height of a picture: what is kept of it even where the text has to go on on a page of its own. */
const leastShare = 0.3;
/** Of the same height: what a frame to draw in has at least. */
const leastFrame = 0.5;

function drawPictures(
  { illustrations, placed }: BookPage,
  zone: Zone,
  { maker, story, node }: { maker: PageMaker; story: StudioStory; node: StructureNode },
): void {
  const pictures: readonly { picture: Picture | undefined; alternative: string }[] =
    illustrations.length === 0
      ? [{ picture: undefined, alternative: 'An empty frame for a drawing' }]
      : illustrations.map((illustration) => {
          const picture = story.picture(illustration, placed.start);
          const note = alternativeOf(illustration);
          return {
            picture,
            alternative: picture === undefined ? `An empty frame for a drawing: ${note}` : note,
          };
        });
  const width = (zone.width - 14 * (pictures.length - 1)) / pictures.length;
  for (const [index, { picture, alternative }] of pictures.entries()) {
    const place = { x: zone.x + index * (width + 14), y: zone.y, width, height: zone.height };
    const figure = node.add('Figure', alternative);
    if (picture !== undefined) maker.picture(picture, place, figure);
    else maker.box(place, { stroke: inks.faint, lineWidth: 1, radius: 10, node: figure });
  }
}

/** Sets as many sentences as fit above the foot, from the capitals' top at `top` on; gives those that are left. */
function drawText(
  text: SetText,
  top: number,
  size: number,
  { maker, studio, style, node }: { maker: PageMaker; studio: Studio; style: BookStyle; node: StructureNode },
): SetText {
  const { face, wordSpace } = childStyle(studio.faces.regular, size);
  const bottom = style.page.height - style.margins.bottom - footHeight;
  let y = top + 0.73 * size;
  for (const [index, lines] of text.entries()) {
    const fitting = lines.filter((_, line) => y + line * leading.line * size <= bottom).length;
    const isFirst = index === 0;
    if (fitting < lines.length && !(isFirst && fitting > 0 && top <= style.margins.top))
      return text.slice(index);
    const paragraph = node.add('P');
    for (const line of lines.slice(0, fitting)) {
      maker.text(line, style.margins.side, y, { face, size, wordSpace, node: paragraph });
      y += leading.line * size;
    }
    if (fitting < lines.length) return [lines.slice(fitting), ...text.slice(index + 1)];
    y += (leading.sentence - leading.line) * size;
  }
  return [];
}

/** The page number, in the middle of the foot. */
export function drawNumber(number: number, maker: PageMaker, { faces }: Studio, style: BookStyle): void {
  maker.text(String(number), style.page.width / 2, style.page.height - style.margins.bottom, {
    face: faces.regular,
    size: smallestSize,
    ink: inks.quiet,
    anchor: 'middle',
  });
}
