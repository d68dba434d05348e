import type { Story } from './story.ts';

/** The title of a story: the front matter's, else the first heading, else nothing. */
export function storyTitle({ frontMatter, title }: Story): string | undefined {
  return frontMatter.title?.value ?? title?.text;
}
