import type { Illustration } from '../../story/story.ts';
import { storyTitle } from '../../story/story-title.ts';
import type { Span } from '../../text/span.ts';
import type { PrintedStory, PrintProblem } from '../order.ts';
import { lackedCharacters } from '../pdf/typeface.ts';
import type { Picture } from '../pictures/picture.ts';
import type { readPicture } from '../pictures/read-picture.ts';
import type { Faces } from './faces.ts';
import type { LayoutTools } from './laid-out.ts';
import { typographic } from './typographic.ts';

/** What all pages of a document share: the faces, the pictures read so far, the problems found so far. */
export interface Studio {
  readonly faces: Faces;
  readonly problems: PrintProblem[];
  /** The pictures that were read, each with an address that a story gives it. */
  readonly addresses: ReadonlyMap<Picture, string>;
  /** A story at its place in the order, ready to be set; the same object every time. */
  storyAt(index: number): StudioStory;
}

/** A story with what setting it needs. */
export interface StudioStory {
  readonly index: number;
  readonly printed: PrintedStory;
  /** As printed; never empty. */
  readonly title: string;
  /** The text as printed; letters that the faces lack are noted as problems, at the text's place in the file. */
  text(text: string, span?: Span): string;
  /** The picture of an illustration; nothing when it has no address, or none that can be used, which is noted. */
  picture(illustration: Illustration, pageStart: number): Picture | undefined;
  problem(message: string, span?: Span): void;
}

/** Sets up a studio for the stories of an order. */
export function createStudio(stories: readonly PrintedStory[], { faces, read }: LayoutTools): Studio {
  const problems: PrintProblem[] = [];
  const ready = new Map<number, StudioStory>();
  const addresses = new Map<Picture, string>();
  const pictures = new Map<Uint8Array, ReturnType<typeof readPicture>>();
  const readOnce = (bytes: Uint8Array, address: string): ReturnType<typeof readPicture> => {
    const picture = pictures.get(bytes) ?? read(bytes);
    pictures.set(bytes, picture);
    if (!('trouble' in picture) && !addresses.has(picture)) addresses.set(picture, address);
    return picture;
  };
  return {
    faces,
    problems,
    addresses,
    storyAt: (index) => {
      const known = ready.get(index);
      if (known !== undefined) return known;
      const printed = stories[index];
      if (printed === undefined) throw new RangeError(`There is no story ${index}.`);
      const story = studioStory(index, printed, faces, problems, readOnce);
      noteUnreadText(story);
      noteEmptiness(story);
      ready.set(index, story);
      return story;
    },
  };
}

/** What could not be read of a story would be missing in print. */
function noteUnreadText({ printed, problem }: StudioStory): void {
  for (const { page, start } of printed.review.story.pages) {
    for (const { severity, message, span } of page.problems) {
      if (severity === 'error') problem(message, { start: start + span.start, end: start + span.end });
    }
  }
}

/** A book of a title page alone is not what anybody means to print. */
function noteEmptiness({ printed, problem }: StudioStory): void {
  const { pages, frontMatter } = printed.review.story;
  if (pages.every(({ page }) => page.sentences.length + page.illustrations.length === 0)) {
    problem('There is nothing to print yet: the story has no text and no picture.', frontMatter.lesson?.span);
  }
}

function studioStory(
  index: number,
  printed: PrintedStory,
  faces: Faces,
  problems: PrintProblem[],
  readOnce: (bytes: Uint8Array, address: string) => ReturnType<typeof readPicture>,
): StudioStory {
  const noted = new Set<string>();
  const problem = (message: string, span?: Span): void => {
    if (noted.has(message)) return;
    noted.add(message);
    problems.push({ story: index, ...(span === undefined ? {} : { span }), message });
  };
  const text = (given: string, span?: Span): string => {
    const set = typographic(given);
    const lacked = lackedCharacters(set, faces.regular);
    if (lacked.length > 0) {
      const named = lacked.map((character) => `“${character}” (${codeOf(character)})`).join(', ');
      problem(`Andika, the face that everything is printed in, has no ${named}.`, span);
    }
    return set;
  };
  return {
    index,
    printed,
    title: text(storyTitle(printed.review.story) ?? 'Untitled'),
    text,
    picture: ({ address, span: { start, end } }, pageStart) => {
      if (address === '') return undefined;
      const span = { start: pageStart + start, end: pageStart + end };
      const file = printed.pictures.get(address) ?? { trouble: 'is not there' };
      if ('isToCome' in file) return undefined;
      if ('trouble' in file) {
        problem(`The picture “${address}” ${file.trouble}.`, span);
        return undefined;
      }
      const read = readOnce(file.bytes, address);
      if ('trouble' in read) {
        problem(`The picture “${address}” ${read.trouble}.`, span);
        return undefined;
      }
      return read;
    },
    problem,
  };
}

function codeOf(character: string): string {
  return `U+${(character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`;
}
