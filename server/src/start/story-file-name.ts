import type { StoryWish } from './new-story.ts';

/**
 * The name of the file for a story: lesson and title in small letters with hyphens, so that a folder lists stories by
 * lesson; `story.md` where nothing is left. Holds no sign that a file system minds.
 */
export function storyFileName({ title, lesson }: Pick<StoryWish, 'title' | 'lesson'>): string {
  const parts = [/^\d$/.test(lesson) ? `0${lesson}` : lesson, title].map(plain).filter((part) => part !== '');
  return `${parts.join('-').slice(0, 80) || 'story'}.md`;
}

function plain(text: string): string {
  return text
    .normalize('NFKD')
    .toLowerCase()
    .replace(/\p{M}|['\u2019]/gu, '')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '');
}
