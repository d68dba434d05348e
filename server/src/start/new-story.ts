/** What a writer says of a story that is to be begun. */
export interface StoryWish {
  readonly title: string;
  /** The name of its lesson, as the sequence has it. */
  readonly lesson: string;
  /** How many pages, 1 or more; at most 99 are made. */
  readonly pages: number;
}

/** A story file to begin with: front matter, and pages that hold a note for the teacher and nothing yet for the child. */
export function newStory({ title, lesson, pages }: StoryWish): string {
  const count = Math.min(99, Math.max(1, Math.floor(pages) || 1));
  const notes = Array.from({ length: count }, (_, index) => `> ${noteFor(index + 1, count)}\n`);
  const frontMatter = `---\ntitle: ${quoted(title)}\nlesson: ${quoted(lesson)}\n---\n`;
  return `${frontMatter}${notes.join('\n---\n\n')}`;
}

/**
 * The name of the file for a story: lesson and title in small letters with hyphens, so that a folder lists stories by
 * lesson; `story.md` where nothing is left. Holds no sign that a file system minds.
 */
export function storyFileName({ title, lesson }: Pick<StoryWish, 'title' | 'lesson'>): string {
  const parts = [/^\d$/.test(lesson) ? `0${lesson}` : lesson, title].map(plain).filter((part) => part !== '');
  return `${parts.join('-').slice(0, 80) || 'story'}.md`;
}

function noteFor(page: number, count: number): string {
  if (page === 1)
    return 'For the teacher: who is in this story, and what do they want? Write for the child below.';
  if (page === count) return 'For the teacher: how does it end?';
  return 'For the teacher: what happens next?';
}

/** A YAML scalar in double quotes, which JSON's strings are. */
function quoted(text: string): string {
  return JSON.stringify(text.trim());
}

function plain(text: string): string {
  return text
    .normalize('NFKD')
    .toLowerCase()
    .replace(/\p{M}|['\u2019]/gu, '')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '');
}
