import { bookletSides, singleSides } from '../layout/imposition.ts';
import type { LaidOut, LayoutTools } from '../layout/laid-out.ts';
import { PageMaker } from '../layout/page-maker.ts';
import { sheetSize } from '../layout/paper.ts';
import { createStudio } from '../layout/studio.ts';
import type { PrintOrder } from '../order.ts';
import type { DrawnDocument, DrawnPage } from '../pdf/drawing.ts';
import { StructureNode } from '../pdf/structure.ts';
import { bookStyle } from './book-style.ts';
import { collectionFront } from './collection-front.ts';
import { storyPages } from './story-pages.ts';
import { titlePage } from './title-page.ts';

/** Lays out the child's book; several stories become a collection with a cover and a list of contents. */
export function layOutBook(order: PrintOrder, tools: LayoutTools): LaidOut {
  const { stories, layout, paper, onStory } = order;
  const studio = createStudio(stories, tools);
  const style = bookStyle(layout, paper);
  const root = new StructureNode('Document');
  const isCollection = stories.length > 1;
  const front = isCollection ? collectionFront(order, studio, style, root) : undefined;
  const pages: DrawnPage[] = Array.from({ length: front?.length ?? 0 }, () => new PageMaker(style.page));
  const starts: { readonly title: string; readonly page: number }[] = [];
  for (const index of stories.keys()) {
    onStory?.(index);
    const story = studio.storyAt(index);
    // A story of a collection begins on a right-hand page; these have the odd numbers.
    if (pages.length % 2 === 1) pages.push(new PageMaker(style.page));
    starts.push({ title: story.title, page: pages.length + 1 });
    const node = root.add('Part');
    pages.push(titlePage(story, studio, style, { node, heading: isCollection ? 'H2' : 'H1' }));
    const firstNumber = isCollection ? pages.length + 1 : 1;
    pages.push(...storyPages({ studio, story, style, node, firstNumber }));
  }
  if (front !== undefined) pages.splice(0, front.length, ...front.draw(starts));
  const isBooklet = layout === 'booklet';
  const sides = isBooklet ? bookletSides(pages, sheetSize(paper, layout)) : singleSides(pages);
  const title = isCollection ? order.title : studio.storyAt(0).title;
  const document: DrawnDocument = {
    title,
    sides,
    root,
    bookmarks:
      isCollection && !isBooklet ? starts.map((start) => ({ title: start.title, side: start.page - 1 })) : [],
    turnsOverShortEdge: isBooklet,
  };
  return { document, problems: studio.problems, addresses: studio.addresses };
}
