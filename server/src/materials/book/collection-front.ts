import { counted } from '../../review/wording.ts';
import { brokenLines } from '../layout/lines.ts';
import { inks, PageMaker } from '../layout/page-maker.ts';
import type { Studio } from '../layout/studio.ts';
import { typographic } from '../layout/typographic.ts';
import type { PrintOrder } from '../order.ts';
import type { DrawnPage } from '../pdf/drawing.ts';
import type { StructureNode } from '../pdf/structure.ts';
import { widthOf } from '../pdf/typeface.ts';
import { type BookStyle, measureOf, smallestSize } from './book-style.ts';
import { drawFoot, drawTitle } from './title-page.ts';

/** The pages before the first story of a collection. Their number is known before the contents are. */
export interface CollectionFront {
  readonly length: number;
  /** Draws cover and contents, given where the stories begin. */
  draw(starts: readonly { readonly title: string; readonly page: number }[]): readonly DrawnPage[];
}

/** Plans the front of a collection: the cover, its empty back, and the contents on the next right-hand pages. */
export function collectionFront(
  order: PrintOrder,
  studio: Studio,
  style: BookStyle,
  root: StructureNode,
): CollectionFront {
  const node = root.add('Part');
  const titles = order.stories.map((_, index) => studio.storyAt(index).title);
  const groups = contentsPages(titles, studio, style);
  return {
    length: 2 + groups.length,
    draw: (starts) => {
      const cover = new PageMaker(style.page);
      const title = typographic(order.title);
      drawTitle(title, 0.3 * style.page.height, { maker: cover, studio, style, node, heading: 'H1' });
      drawFoot(coverLines(order), { maker: cover, studio, style, node });
      const contents = groups.map((entries, index) =>
        contentsPage(entries, index === 0, starts, { studio, style, node }),
      );
      return [cover, new PageMaker(style.page), ...contents];
    },
  };
}

function coverLines({ stories, title }: PrintOrder): readonly string[] {
  const lessons = stories.map(({ review }) => review.taught.lesson);
  const sorted = [...lessons].sort((one, other) => one.index - other.index);
  const first = sorted[0]?.name ?? '';
  const last = sorted.at(-1)?.name ?? '';
  const named = first === last ? `Lesson ${first}` : `Lessons ${first} to ${last}`;
  const sequences = new Set(stories.map(({ review }) => review.taught.sequence.title));
  const [sequence = ''] = sequences.size === 1 ? sequences : [];
  return [counted(stories.length, 'story', 'stories'), named, sequence]
    .filter((line) => line !== '' && line !== title)
    .map(typographic);
}

interface Entry {
  readonly index: number;
  readonly lines: readonly string[];
}

const numberRoom = 64;
const lead = 1.5 * smallestSize;
const between = 0.35 * smallestSize;

function contentsPages(
  titles: readonly string[],
  { faces }: Studio,
  style: BookStyle,
): readonly (readonly Entry[])[] {
  const look = { face: faces.regular, size: smallestSize, wordSpace: 1.2 };
  const room = style.page.height - style.margins.top - style.margins.bottom;
  const pages: Entry[][] = [];
  let used = Number.POSITIVE_INFINITY;
  for (const [index, title] of titles.entries()) {
    const lines = brokenLines(title, measureOf(style) - numberRoom, look);
    const height = lines.length * lead + between;
    if (used + height > room) {
      // The first page has the heading.
      used = pages.length === 0 ? 3.6 * smallestSize : smallestSize;
      pages.push([]);
    }
    pages.at(-1)?.push({ index, lines });
    used += height;
  }
  return pages;
}

function contentsPage(
  entries: readonly Entry[],
  isFirst: boolean,
  starts: readonly { readonly page: number }[],
  { studio, style, node }: { studio: Studio; style: BookStyle; node: StructureNode },
): DrawnPage {
  const maker = new PageMaker(style.page);
  const { side, top } = style.margins;
  const right = style.page.width - side;
  const look = { face: studio.faces.regular, size: smallestSize, wordSpace: 1.2 };
  let y = top + 0.73 * smallestSize;
  if (isFirst) {
    y += 0.4 * smallestSize;
    const heading = node.add('H2');
    maker.text('Contents', side, y, { face: studio.faces.bold, size: 1.4 * smallestSize, node: heading });
    y += 2.2 * smallestSize;
  }
  const list = node.add('TOC');
  for (const { index, lines } of entries) {
    const paragraph = list.add('TOCI').add('P');
    for (const [at, line] of lines.entries()) {
      const width = maker.text(line, side, y, { ...look, node: paragraph });
      if (at === lines.length - 1) {
        const number = String(starts[index]?.page ?? '');
        const leader = right - widthOf(number, look.face, look.size) - 10;
        if (leader - side - width > 24) {
          maker.line([side + width + 10, y], [leader, y], { ink: inks.faint, lineWidth: 1, dash: [1, 5] });
        }
        maker.text(number, right, y, { ...look, anchor: 'end', node: paragraph });
      }
      y += lead;
    }
    y += between;
  }
  return maker;
}
