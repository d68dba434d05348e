import type { Story } from '../../story/story.ts';
import type { Span } from '../../text/span.ts';

/**
 * Where findings on the whole text stand: on the lesson in the front matter, since it is the lesson that asks for what
 * is found; else on the title; else on the first sentence; else at the start of the file.
 */
export function wholeTextSpan({ frontMatter, title, pages }: Story): Span {
  if (frontMatter.lesson !== undefined) return frontMatter.lesson.span;
  if (title !== undefined) return title.span;
  for (const { page, start } of pages) {
    const sentence = page.sentences[0];
    if (sentence !== undefined) {
      return { start: start + sentence.span.start, end: start + sentence.span.end };
    }
  }
  return { start: 0, end: 0 };
}
