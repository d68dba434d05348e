import { shifted } from '../text/span.ts';
import { noFrontMatter, type ReadFrontMatter, readFrontMatter } from './front-matter.ts';
import { findFrontMatter } from './front-matter-block.ts';
import { cutPages, type PagePlace } from './page-breaks.ts';
import { printedTitle } from './printed-title.ts';
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
  for (let index = 0; index < places.length; index++) {
    const place = places[index];
    if (place === undefined) break;
    const found = known.find(text, place, index, places.length, title === undefined);
    const page = found?.page ?? read(text, place, title, definitions);
    if (page.heading !== undefined) title = movedHeading(page.heading, place.start);
    const isInPlace = found?.start === place.start && found.number === index + 1;
    pages.push(isInPlace ? found : { page, number: index + 1, start: place.start });
  }
  const shown = title ?? printedTitle(text, frontMatter);
  return {
    isStory: hasLesson,
    text,
    frontMatter,
    ...(shown === undefined ? {} : { title: shown }),
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
  #bySource: Map<string, PlacedPage> | undefined;

  constructor(previous: Story | undefined, definitions: string) {
    this.#pages = previous?.pages ?? [];
    this.#sameDefinitions = previous?.definitions === definitions;
  }

  find(
    text: string,
    place: PagePlace,
    index: number,
    count: number,
    mayHoldTitle: boolean,
  ): PlacedPage | undefined {
    if (this.#pages.length === 0 || place.unread) return undefined;
    const fromHead = this.#pages[index];
    if (this.#fits(fromHead, text, place, mayHoldTitle)) return fromHead;
    const fromFoot = this.#pages[this.#pages.length - (count - index)];
    if (this.#fits(fromFoot, text, place, mayHoldTitle)) return fromFoot;
    this.#bySource ??= new Map(this.#pages.map((placed) => [placed.page.source, placed]));
    const moved = this.#bySource.get(text.slice(place.start, place.end));
    return this.#fits(moved, text, place, mayHoldTitle) ? moved : undefined;
  }

  #fits(
    placed: PlacedPage | undefined,
    text: string,
    place: PagePlace,
    mayHoldTitle: boolean,
  ): placed is PlacedPage {
    if (placed === undefined) return false;
    const { page } = placed;
    return (
      page.source.length === place.end - place.start &&
      text.startsWith(page.source, place.start) &&
      (page.headings === 0 || (page.heading !== undefined) === mayHoldTitle) &&
      (this.#sameDefinitions || !page.source.includes('[')) &&
      !isUnread(page)
    );
  }
}

function movedHeading(heading: Heading, by: number): Heading {
  return {
    text: heading.text,
    words: heading.words.map((word) => ({ ...word, span: shifted(word.span, by) })),
    span: shifted(heading.span, by),
  };
}
