import type { Lesson } from '../../sequence/sequence.ts';
import { brokenLines, wordsTooWide } from '../layout/lines.ts';
import { inks, PageMaker } from '../layout/page-maker.ts';
import type { Studio, StudioStory } from '../layout/studio.ts';
import type { DrawnPage } from '../pdf/drawing.ts';
import type { StructureNode, StructureType } from '../pdf/structure.ts';
import type { Picture } from '../pictures/picture.ts';
import { bookPages } from './book-pages.ts';
import { type BookStyle, measureOf, smallestSize } from './book-style.ts';

/** The title page of a story: its title, a small picture of what is to come, and the lesson it needs. */
export function titlePage(
  story: StudioStory,
  studio: Studio,
  style: BookStyle,
  { node, heading }: { readonly node: StructureNode; readonly heading: StructureType },
): DrawnPage {
  const maker = new PageMaker(style.page);
  const top = (vignetteOf(story) === undefined ? 0.32 : 0.2) * style.page.height;
  const bottom = drawTitle(story.title, top, { maker, studio, style, node, heading });
  for (const word of wordsTooWide(story.title, measureOf(style), {
    face: studio.faces.bold,
    size: smallestSize,
    wordSpace: 1,
  })) {
    story.problem(`“${word}” in the title is too long for a line of ${smallestSize}-point letters.`);
  }
  const { lesson, sequence } = story.printed.review.taught;
  const lines = [lessonName(lesson), ...(sequence.title === '' ? [] : [sequence.title])].map((line) =>
    story.text(line),
  );
  const foot = drawFoot(lines, { maker, studio, style, node });
  drawVignette(story, { top: bottom, bottom: foot }, maker, style);
  return maker;
}

/** `Lesson 4: d and short i`. */
export function lessonName({ name, title }: Lesson): string {
  const named = /^lesson\b/i.test(name) ? name : `Lesson ${name}`;
  return title === undefined || title === '' ? named : `${named}: ${title}`;
}

interface Drawing {
  readonly maker: PageMaker;
  readonly studio: Studio;
  readonly style: BookStyle;
  readonly node: StructureNode;
}

/** Sets a title in the middle, as large as it fits on at most three lines; gives where it ends. */
export function drawTitle(
  title: string,
  top: number,
  { maker, studio, style, node, heading }: Drawing & { readonly heading: StructureType },
): number {
  const face = studio.faces.bold;
  const width = measureOf(style);
  const set = (size: number) => brokenLines(title, width, { face, size, wordSpace: 1.2 });
  const size =
    style.titleSizes.find(
      (each) =>
        set(each).length <= 3 &&
        wordsTooWide(title, width, { face, size: each, wordSpace: 1.2 }).length === 0,
    ) ?? smallestSize;
  const element = node.add(heading);
  let y = top + 0.73 * size;
  for (const line of set(size)) {
    maker.text(line, style.page.width / 2, y, {
      face,
      size,
      wordSpace: 1.2,
      anchor: 'middle',
      node: element,
    });
    y += 1.3 * size;
  }
  return y - 1.3 * size + 0.3 * size;
}

/** Sets lines at the foot of a page, in the middle; gives where they begin. */
export function drawFoot(lines: readonly string[], { maker, studio, style, node }: Drawing): number {
  const look = { face: studio.faces.regular, size: smallestSize, wordSpace: 1.2 };
  const set = lines.map((line) => brokenLines(line, measureOf(style), look));
  const count = set.flat().length;
  const lead = 1.4 * smallestSize;
  let y = style.page.height - style.margins.bottom - (count - 1) * lead;
  const top = y - smallestSize;
  for (const paragraph of set) {
    const element = node.add('P');
    for (const line of paragraph) {
      maker.text(line, style.page.width / 2, y, {
        ...look,
        ink: inks.quiet,
        anchor: 'middle',
        node: element,
      });
      y += lead;
    }
  }
  return top;
}

function vignetteOf(story: StudioStory): Picture | undefined {
  return bookPages(story)
    .flatMap(({ illustrations, placed }) =>
      illustrations.flatMap((illustration) => story.picture(illustration, placed.start) ?? []),
    )
    .at(0);
}

/** The story's first picture, small, between the title and the foot. It is decoration here. */
function drawVignette(
  story: StudioStory,
  { top, bottom }: { readonly top: number; readonly bottom: number },
  maker: PageMaker,
  style: BookStyle,
): void {
  const first = vignetteOf(story);
  const height = Math.min(bottom - top - 90, 0.34 * style.page.height);
  if (first === undefined || height < 80) return;
  const width = 0.74 * measureOf(style);
  const y = top + 0.4 * (bottom - top - height);
  maker.picture(first, { x: (style.page.width - width) / 2, y, width, height });
}
