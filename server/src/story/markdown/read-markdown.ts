import type { MarkdownNode } from './markdown-node.ts';
import { parseMarkdown } from './parse-markdown.ts';
import { parsePlainMarkdown } from './plain-markdown.ts';

/** The blocks of one page: read at once when it is plain, by the library otherwise. */
export function readMarkdown(source: string): readonly MarkdownNode[] {
  return parsePlainMarkdown(source) ?? parseMarkdown(source);
}
