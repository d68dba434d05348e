import type { Phonics } from '../phonics/phonics.ts';
import type { Taught } from '../sequence/taught.ts';
import type { WordFinder } from '../words/find-words.ts';
import { practiceLines } from './practice-lines.ts';

/** What a writer says of a story that is to be begun. */
export interface StoryWish {
  readonly title: string;
  /** The name of its lesson, as the sequence has it. */
  readonly lesson: string;
  /** How many pages, 1 or more; at most 99 are made. */
  readonly pages: number;
}

/** A story to begin with. */
export interface NewStory {
  readonly text: string;
  /** How many pages it has. */
  readonly pages: number;
}

/**
 * A story file to begin with: front matter, a note for the teacher on each page, and short lines below that hold the
 * lesson's practice, so that the file passes as it is wherever the lesson's words can be put into lines at all. They are
 * there to be written over. It has more pages than asked for where these cannot hold the lines.
 */
export function newStory(
  { title, lesson, pages }: StoryWish,
  taught: Taught,
  finder: WordFinder,
  phonics: Phonics,
): NewStory {
  const asked = Math.min(99, Math.max(1, Math.floor(pages) || 1));
  const lines = practiceLines(taught, finder, phonics, asked);
  const laidOut = onPages(lines, asked, taught.targets.page);
  const written = laidOut.map(
    (page, index) =>
      `> ${noteFor(index + 1, laidOut.length)}\n${page.length === 0 ? '' : `\n${page.join('\n')}\n`}`,
  );
  const frontMatter = `---\ntitle: ${quoted(title)}\nlesson: ${quoted(lesson)}\n---\n`;
  return { text: `${frontMatter}${written.join('\n---\n\n')}`, pages: laidOut.length };
}

/** Lines spread over at least so many pages, in their order, none with more words than a page may have. */
function onPages(lines: readonly string[], asked: number, mostWords: number): readonly (readonly string[])[] {
  const pages: string[][] = [];
  let left = lines.length;
  let words = 0;
  for (const line of lines) {
    const page = pages.at(-1);
    const count = line.split(' ').length;
    const pagesLeft = Math.max(1, asked - pages.length + 1);
    const isFull =
      page === undefined ||
      words + count > mostWords ||
      page.length >= Math.ceil((left + page.length) / pagesLeft);
    if (isFull) {
      pages.push([line]);
      words = count;
    } else {
      page.push(line);
      words += count;
    }
    left -= 1;
  }
  while (pages.length < asked) pages.push([]);
  return pages;
}

function noteFor(page: number, count: number): string {
  if (page === 1)
    return 'For you, who write: the lines below only practise what the lesson teaches, so that nothing is marked. Write your story over them. Who is in it, and what do they want?';
  if (page === count) return 'For you, who write: how does it end?';
  return 'For you, who write: what happens next?';
}

/** A YAML scalar in double quotes, which JSON's strings are. */
function quoted(text: string): string {
  return JSON.stringify(text.trim());
}
