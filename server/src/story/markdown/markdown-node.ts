import type { Span } from '../../text/span.ts';

/** What a page of markdown holds, as far as a story needs it; spans are UTF-16 code units of the page's source. */
export type MarkdownNode =
  | MarkdownGroup
  | MarkdownText
  | MarkdownPicture
  | MarkdownCodeBlock
  | MarkdownHtml
  | { readonly kind: 'line break'; readonly span: Span }
  | { readonly kind: 'code'; readonly span: Span }
  | { readonly kind: 'definition'; readonly name: string; readonly address: string; readonly span: Span };

/** A node with others in it: a block, a list, or what is emphasised or linked (`other`). */
export interface MarkdownGroup {
  readonly kind: 'paragraph' | 'heading' | 'quote' | 'list' | 'list item' | 'other';
  readonly children: readonly MarkdownNode[];
  readonly span: Span;
}

/** A piece of text. */
export interface MarkdownText {
  readonly kind: 'text';
  /** As it is read, escapes and character references resolved. */
  readonly text: string;
  /** Where each unit of `text` stands; absent when the text is just what the source has in `span`. */
  readonly places?: UnitPlaces;
  readonly span: Span;
}

/** For each UTF-16 unit of a text where its source begins and ends. */
export interface UnitPlaces {
  readonly starts: readonly number[];
  readonly ends: readonly number[];
}

/** A picture: `![note](address)`, or by name, `![note][name]`. */
export interface MarkdownPicture {
  readonly kind: 'picture';
  /** Its alternative text. */
  readonly note: string;
  readonly from: { readonly address: string } | { readonly name: string };
  readonly span: Span;
}

/** Lines between fences, or indented ones. */
export interface MarkdownCodeBlock {
  readonly kind: 'code block';
  readonly text: string;
  readonly span: Span;
}

/** HTML, a block of it or a tag or comment inside a line. */
export interface MarkdownHtml {
  readonly kind: 'html';
  readonly html: string;
  readonly span: Span;
}
