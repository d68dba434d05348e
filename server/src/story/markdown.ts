import type { Root } from 'mdast';
import { setextUnderline } from 'micromark-core-commonmark';
import remarkParse from 'remark-parse';
import { unified } from 'unified';

/**
 * CommonMark, but a line of hyphens under text is never the underline of a heading: it is a page break, and `-` or `--`
 * is one half-written. The underline of equals signs stays.
 */
const processor = unified()
  .data('micromarkExtensions', [
    {
      disable: { null: ['setextUnderline'] },
      flow: { 61: { ...setextUnderline, name: 'equalsUnderline' } },
    },
  ])
  .use(remarkParse)
  .freeze();

/** Parses the markdown of one page; offsets of the tree are UTF-16 code units of `source`. */
export function parseMarkdown(source: string): Root {
  return processor.parse(source);
}
