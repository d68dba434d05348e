import {
  type ErrorCode,
  isAlias,
  isMap,
  isScalar,
  isSeq,
  type Node,
  type Pair,
  parseDocument,
  type YAMLError,
} from 'yaml';
import type { Span } from '../text/span.ts';
import { endOfBlock, type YamlNode, type YamlPair, type YamlText } from './yaml-node.ts';

/** A text of YAML as the library understood it. */
export interface ParsedYaml {
  /** Null for a text without content. */
  readonly contents: YamlNode | null;
  readonly errors: readonly YamlFault[];
  readonly warnings: readonly YamlFault[];
}

/** Where a text breaks the rules of YAML; offsets of the text, `end` possibly beyond it. */
export interface YamlFault {
  readonly code: ErrorCode;
  /** In the words of the library. */
  readonly message: string;
  readonly span: Span;
}

/**
 * Parses any YAML with the library `yaml`. Names are kept as they stand, and a key that stands twice is no fault here.
 * Plain texts are read quicker, and the same, by `parsePlainYaml`.
 */
export function parseYaml(text: string): ParsedYaml {
  const document = parseDocument(text, {
    schema: 'failsafe',
    uniqueKeys: false,
    prettyErrors: false,
    logLevel: 'error',
  });
  return {
    contents: nodeOf(document.contents),
    errors: document.errors.map(faultOf),
    warnings: document.warnings.map(faultOf),
  };
}

function faultOf({
  code,
  message,
  pos: [start, end],
}: YAMLError | { code: ErrorCode; message: string; pos: [number, number] }): YamlFault {
  return { code, message, span: { start, end } };
}

function nodeOf(value: unknown): YamlNode | null {
  if (isScalar(value)) return textOf(value);
  if (isAlias(value)) return { kind: 'alias', name: value.source, span: rangeOf(value) };
  if (isSeq(value)) {
    const items = value.items.map(nodeOf);
    const flow = value.flow === true;
    const { start, end } = rangeOf(value);
    return {
      kind: 'list',
      items,
      flow,
      span: { start, end: flow ? end : endOfBlock(items.at(-1), null, start) },
    };
  }
  if (isMap(value)) {
    const pairs = value.items.map(pairOf);
    const flow = value.flow === true;
    const { start, end } = rangeOf(value);
    const last = pairs.at(-1);
    return {
      kind: 'map',
      pairs,
      flow,
      span: { start, end: flow ? end : endOfBlock(last?.value, last?.key, start) },
    };
  }
  return null;
}

function pairOf({ key, value }: Pair): YamlPair {
  return { key: nodeOf(key), value: nodeOf(value) };
}

function textOf(node: Node & { value: unknown; type?: string; tag?: string }): YamlText {
  const style = node.type?.startsWith('QUOTE')
    ? 'quoted'
    : node.type?.startsWith('BLOCK')
      ? 'block'
      : 'plain';
  const text = String(node.value ?? '');
  return {
    kind: 'text',
    text,
    style,
    ...(node.tag === undefined ? {} : { tag: node.tag }),
    span: rangeOf(node),
  };
}

function rangeOf(node: Node): Span {
  return { start: node.range?.[0] ?? 0, end: node.range?.[1] ?? 0 };
}
