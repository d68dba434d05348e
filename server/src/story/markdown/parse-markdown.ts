import type { Nodes } from 'mdast';
import { setextUnderline } from 'micromark-core-commonmark';
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import type { Span } from '../../text/span.ts';
import type { MarkdownGroup, MarkdownNode } from './markdown-node.ts';
import { unitPlaces } from './unit-places.ts';

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

/** Parses the markdown of one page, whatever it is, with the library `remark-parse`: its blocks in order. */
export function parseMarkdown(source: string): readonly MarkdownNode[] {
  return processor.parse(source).children.map((node) => nodeOf(node, source));
}

function nodeOf(node: Nodes, source: string): MarkdownNode {
  const span: Span = {
    start: node.position?.start.offset ?? 0,
    end: node.position?.end.offset ?? 0,
  };
  switch (node.type) {
    case 'text': {
      const isVerbatim =
        span.end - span.start === node.value.length && source.startsWith(node.value, span.start);
      const places = isVerbatim ? {} : { places: unitPlaces(node.value, source, span) };
      return { kind: 'text', text: node.value, ...places, span };
    }
    case 'break':
      return { kind: 'line break', span };
    case 'html':
      return { kind: 'html', html: node.value, span };
    case 'inlineCode':
      return { kind: 'code', span };
    case 'code':
      return { kind: 'code block', text: node.value, span };
    case 'image':
      return { kind: 'picture', note: node.alt ?? '', from: { address: node.url }, span };
    case 'imageReference':
      return { kind: 'picture', note: node.alt ?? '', from: { name: node.identifier }, span };
    case 'definition':
      return { kind: 'definition', name: node.identifier, address: node.url, span };
    default: {
      const children = 'children' in node ? node.children.map((child) => nodeOf(child, source)) : [];
      return { kind: groupKinds[node.type] ?? 'other', children, span };
    }
  }
}

const groupKinds: { readonly [Type in Nodes['type']]?: MarkdownGroup['kind'] } = {
  paragraph: 'paragraph',
  heading: 'heading',
  blockquote: 'quote',
  list: 'list',
  listItem: 'list item',
};
