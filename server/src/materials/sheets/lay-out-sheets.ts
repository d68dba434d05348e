import { bookStyle } from '../book/book-style.ts';
import { lessonName } from '../book/title-page.ts';
import { Flow } from '../layout/flow.ts';
import { singleSides } from '../layout/imposition.ts';
import type { LaidOut, LayoutTools } from '../layout/laid-out.ts';
import type { PageMaker } from '../layout/page-maker.ts';
import { createStudio, type StudioStory } from '../layout/studio.ts';
import type { Material, PrintOrder } from '../order.ts';
import type { DrawnDocument } from '../pdf/drawing.ts';
import { StructureNode } from '../pdf/structure.ts';
import { drawCards } from './cards.ts';
import { drawPracticePages } from './practice-pages.ts';
import { drawTeacherCopy } from './teacher-copy.ts';

/** Lays out what lies beside the book: a page a sheet, each story beginning on a new one. */
export function layOutSheets(
  order: PrintOrder,
  material: Exclude<Material, 'book'>,
  tools: LayoutTools,
): LaidOut {
  const { stories, paper, onStory } = order;
  const studio = createStudio(stories, tools);
  const { page } = bookStyle('page', paper);
  const root = new StructureNode('Document');
  const pages: PageMaker[] = [];
  const starts: { readonly title: string; readonly side: number }[] = [];
  for (const index of stories.keys()) {
    onStory?.(index);
    const story = studio.storyAt(index);
    starts.push({ title: story.title, side: pages.length });
    const lesson = story.text(lessonName(story.printed.review.taught.lesson));
    const flow = new Flow(
      page,
      studio.faces,
      root.add('Part'),
      `${story.title}. ${names[material]}. ${lesson}`,
    );
    draw(material, story, flow, order);
    pages.push(...flow.finish());
  }
  const first = starts[0]?.title ?? '';
  const document: DrawnDocument = {
    title: `${stories.length > 1 ? order.title : first}: ${names[material].toLowerCase()}`,
    sides: singleSides(pages),
    root,
    bookmarks: stories.length > 1 ? starts : [],
    turnsOverShortEdge: false,
  };
  return { document, problems: studio.problems, addresses: studio.addresses };
}

const names: Readonly<Record<Exclude<Material, 'book'>, string>> = {
  teacher: 'Teacher’s copy',
  practice: 'Practice pages',
  cards: 'Cards',
};

function draw(material: Exclude<Material, 'book'>, story: StudioStory, flow: Flow, order: PrintOrder): void {
  if (material === 'teacher') drawTeacherCopy(story, flow);
  if (material === 'practice') drawPracticePages(story, flow, order.parts);
  if (material === 'cards') drawCards(story, flow);
}
