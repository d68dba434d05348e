import { isNothing, type YamlList, type YamlNode, type YamlPair } from '../yaml/yaml-node.ts';

/** A word as YAML can have it without being read as something else. */
export function quoted(word: string): string {
  const isPlain = /^[\p{L}\p{M}](?:[\p{L}\p{M}'\u2019. -]*[\p{L}\p{M}.'\u2019])?$/u.test(word);
  return isPlain && !/^(?:null|true|false)$/i.test(word) ? word : JSON.stringify(word);
}

/** The name of a pair; undefined when its key is no plain text. */
export function keyOf({ key }: YamlPair): string | undefined {
  return key?.kind === 'text' ? key.text : undefined;
}

/** True when a list has the item as a plain text. */
export function holds(list: YamlList, item: string): boolean {
  return list.items.some((each) => each?.kind === 'text' && each.text === item);
}

/** True when nothing stands behind a colon. */
export function isEmpty(node: YamlNode): boolean {
  return node.kind === 'text' && node.style === 'plain' && isNothing(node);
}
