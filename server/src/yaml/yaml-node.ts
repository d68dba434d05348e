import type { Span } from '../text/span.ts';

/** What a text of YAML holds, every scalar as it was written: `3` is the text "3", and `no` is the word *no*. */
export type YamlNode = YamlText | YamlList | YamlMap | YamlAlias;

/** A scalar; one that is not there (nothing behind a colon) is an empty plain text. */
export interface YamlText {
  readonly kind: 'text';
  readonly text: string;
  readonly style: 'plain' | 'quoted' | 'block';
  /** The tag in front of it, such as `!`; absent for nearly every text. */
  readonly tag?: string;
  /** With its quotation marks. */
  readonly span: Span;
}

/** A list, with dashes or in brackets. */
export interface YamlList {
  readonly kind: 'list';
  readonly items: readonly (YamlNode | null)[];
  /** True for a list in brackets. */
  readonly flow: boolean;
  /** From the first dash, or the bracket, to the end of the last item, or the bracket. */
  readonly span: Span;
}

/** Keys with values, a line each or in braces. */
export interface YamlMap {
  readonly kind: 'map';
  readonly pairs: readonly YamlPair[];
  /** True for a map in braces. */
  readonly flow: boolean;
  /** From the first key, or the brace, to the end of the last value, or the brace. */
  readonly span: Span;
}

/** A key and its value; either is null when the text has a sign for it and nothing else. */
export interface YamlPair {
  readonly key: YamlNode | null;
  readonly value: YamlNode | null;
}

/** `*name`, which points to another place of the file; it is never followed. */
export interface YamlAlias {
  readonly kind: 'alias';
  readonly name: string;
  readonly span: Span;
}

/** True when nothing stands in a place: no node, or an empty text. */
export function isNothing(node: YamlNode | null | undefined): boolean {
  return (
    node === null ||
    node === undefined ||
    (node.kind === 'text' && node.text === '' && node.tag === undefined && node.style !== 'block')
  );
}

/** The end of a block of dashes or keys: that of its last value, or of the last key when it has none. */
export function endOfBlock(
  last: YamlNode | null | undefined,
  key: YamlNode | null | undefined,
  start: number,
): number {
  return last?.span.end ?? key?.span.end ?? start;
}
