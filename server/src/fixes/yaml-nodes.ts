import { isMap, isScalar, isSeq, type Node, type Pair, type YAMLSeq } from 'yaml';

/** A word as YAML can have it without being read as something else. */
export function quoted(word: string): string {
  const isPlain = /^[\p{L}\p{M}](?:[\p{L}\p{M}'\u2019. -]*[\p{L}\p{M}.'\u2019])?$/u.test(word);
  return isPlain && !/^(?:null|true|false)$/i.test(word) ? word : JSON.stringify(word);
}

/** The name of a pair; undefined when its key is no plain text. */
export function keyOf(pair: Pair): string | undefined {
  return isScalar(pair.key) ? String(pair.key.value) : undefined;
}

/** True when a list has the item as a plain text. */
export function holds(list: YAMLSeq, item: string): boolean {
  return list.items.some((each) => isScalar(each) && String(each.value) === item);
}

/** True when nothing stands behind a colon. */
export function isEmpty(node: Node): boolean {
  return (
    isScalar(node) && String(node.value ?? '') === '' && (node.source ?? '') === '' && node.type === 'PLAIN'
  );
}

/** A value of the library as the node it is; undefined for what is none, an alias too. */
export function asNode(value: unknown): Node | undefined {
  return isScalar(value) || isMap(value) || isSeq(value) ? value : undefined;
}
