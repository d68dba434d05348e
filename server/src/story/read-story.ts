import { shifted } from '../text/span.ts';
import { noFrontMatter, type ReadFrontMatter, readFrontMatter } from './front-matter.ts';
import { findFrontMatter } from './front-matter-block.ts';
import { cutPages, type PagePlace } from './page-breaks.ts';
import { isUnread, readPage, unreadPage } from './read-page.ts';
import type { Heading, Page, PlacedPage, Story } from './story.ts';

/**
 * Reads a draft, whatever its text: what is wrong with it is a problem in the front matter or on its page. Pages whose
 * source stands in `previous` as well are taken over from it as the same objects, and the front matter when it is
 * the same; `readStory(text, previous)` equals `readStory(text)` for every `previous`.
 */
export function readStory(text: string, previous?: Story): Story {
  const block = findFrontMatter(text);
  const { frontMatter, hasLesson }: ReadFrontMatter =
    block === undefined
      ? { frontMatter: noFrontMatter, hasLesson: false }
      : (sameFrontMatter(text, block.bodyStart, previous) ?? readFrontMatter(text, block));
  const from = block?.bodyStart ?? (text.charCodeAt(0) === 0xfeff ? 1 : 0);
  const { pages: places, definitions } = cutPages(text, from);
  const known = new KnownPages(previous, definitions);
  const pages: PlacedPage[] = [];
  let title: Heading | undefined;
  for (const [index, place] of places.entries()) {
    const page =
      known.find(text, place, index, places.length, title === undefined) ??
      read(text, place, title, definitions);
    if (page.heading !== undefined) title = movedHeading(page.heading, place.start);
    pages.push({ page, number: index + 1, start: place.start });
  }
  return {
    isStory: hasLesson,
    text,
    frontMatter,
    ...(title === undefined ? {} : { title }),
    pages,
    bodyStart: from,
    definitions,
  };
}

function read(text: string, place: PagePlace, title: Heading | undefined, definitions: string): Page {
  const source = ownCopy(text, place);
  if (place.unread) return unreadPage(source);
  return readPage(source, { mayHoldTitle: title === undefined, definitions });
}

/** The page's source as a string of its own; a slice would keep the whole text of its version in memory. */
function ownCopy(text: string, place: PagePlace): string {
  return ` ${text.slice(place.start, place.end)}`.slice(1);
}

function sameFrontMatter(
  text: string,
  bodyStart: number,
  previous: Story | undefined,
): ReadFrontMatter | undefined {
  if (previous === undefined || previous.bodyStart !== bodyStart || bodyStart === 0) return undefined;
  // The line behind may decide where a front matter that is not closed ends, but then its place differs too.
  return text.slice(0, bodyStart) === previous.text.slice(0, bodyStart)
    ? { frontMatter: previous.frontMatter, hasLesson: previous.isStory }
    : undefined;
}

/** The pages of an earlier version, found at the same place from the head or the foot, else by their source. */
class KnownPages {
  readonly #pages: readonly PlacedPage[];
  readonly #sameDefinitions: boolean;
  #bySource: Map<string, Page> | undefined;

  constructor(previous: Story | undefined, definitions: string) {
    this.#pages = previous?.pages.filter(({ page }) => !isUnread(page)) ?? [];
    this.#sameDefinitions = previous?.definitions === definitions;
  }

  find(
    text: string,
    place: PagePlace,
    index: number,
    count: number,
    mayHoldTitle: boolean,
  ): Page | undefined {
    if (this.#pages.length === 0 || place.unread) return undefined;
    const fits = (page: Page | undefined) =>
      page !== undefined && this.#isCurrent(page, mayHoldTitle) && isSourceAt(page, text, place);
    const fromHead = this.#pages[index]?.page;
    if (fits(fromHead)) return fromHead;
    const fromFoot = this.#pages[this.#pages.length - (count - index)]?.page;
    if (fits(fromFoot)) return fromFoot;
    this.#bySource ??= new Map(this.#pages.map(({ page }) => [page.source, page]));
    const moved = this.#bySource.get(text.slice(place.start, place.end));
    return fits(moved) ? moved : undefined;
  }

  #isCurrent(page: Page, mayHoldTitle: boolean): boolean {
    const sameTitle = page.headings === 0 || (page.heading !== undefined) === mayHoldTitle;
    return sameTitle && (this.#sameDefinitions || !page.source.includes('['));
  }
}

function isSourceAt(page: Page, text: string, place: PagePlace): boolean {
  return page.source.length === place.end - place.start && text.startsWith(page.source, place.start);
}

function movedHeading(heading: Heading, by: number): Heading {
  return {
    text: heading.text,
    words: heading.words.map((word) => ({ ...word, span: shifted(word.span, by) })),
    span: shifted(heading.span, by),
  };
}
