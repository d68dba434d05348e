import { withoutCurlyQuotes } from '../text/curly-quotes.ts';
import { nearestName } from '../text/nearest-name.ts';
import type { Problem } from '../text/problem.ts';
import type { Span } from '../text/span.ts';
import { isNothing, type YamlMap, type YamlNode, type YamlText } from '../yaml/yaml-node.ts';
import type { Placed } from './sequence.ts';

/** A key of a YAML map with what stands after its colon. */
export interface Field {
  readonly key: Placed<string>;
  /** Null when nothing stands there. */
  readonly value: YamlNode | null;
}

/** Reads the nodes of one YAML file and gathers what is wrong with them, each at its place. */
export class FieldReader {
  readonly problems: Problem[] = [];

  /** Adds a problem at a place. */
  report(message: string, span: Span, severity: Problem['severity'] = 'error'): void {
    this.problems.push({ message, span, severity });
  }

  /**
   * The fields of a map by their keys. A key that is not in `known` is reported with the nearest known one, and read as that
   * (`where` says who has these keys: “a lesson”); of a key that stands twice the first counts. With no `known`, any key will do.
   * Undefined, and reported, when the node is not a map.
   */
  fieldsOf(
    node: YamlNode | null,
    where: string,
    known?: readonly string[],
  ): ReadonlyMap<string, Field> | undefined {
    if (node?.kind !== 'map') {
      this.#reportKind(
        node,
        `${capital(where)} is written as keys and values, as in “${known?.[0] ?? 'title'}: …”.`,
      );
      return undefined;
    }
    const fields = new Map<string, Field>();
    for (const { key, value } of node.pairs) {
      if (key?.kind !== 'text') {
        this.#reportKind(key, `A key of ${where} is a plain name.`, value?.span);
        continue;
      }
      const { text, span } = key;
      const name = known === undefined ? text : this.#knownKey(text, span, where, known, node);
      if (name === undefined) {
        continue;
      }
      if (fields.has(name)) {
        this.report(`${capital(where)} has “${name}” twice. The first one counts.`, span);
      } else {
        fields.set(name, { key: { value: name, span }, value });
      }
    }
    return fields;
  }

  /** A piece of text; undefined when nothing stands there, or something else, which is reported. */
  textOf(field: Field | undefined): Placed<string> | undefined {
    if (field === undefined || isNothing(field.value)) {
      return undefined;
    }
    return this.textOfItem(field.value, `“${field.key.value}” is a piece of text, not a list.`);
  }

  /** A piece of text in a list; anything else is reported with `message`. */
  textOfItem(node: YamlNode | null, message: string): Placed<string> | undefined {
    if (node?.kind !== 'text' || node.text.trim() === '') {
      this.#reportKind(node, message);
      return undefined;
    }
    return { value: withoutCurlyQuotes(node.text.trim()), span: node.span };
  }

  /** The items of a list; empty when nothing stands there; undefined, and reported, when it is no list. */
  itemsOf(field: Field, example: string): readonly (YamlNode | null)[] | undefined {
    if (isNothing(field.value)) {
      return [];
    }
    if (field.value?.kind !== 'list') {
      this.#reportKind(field.value, `“${field.key.value}” is a list, as in ${example}.`, field.key.span);
      return undefined;
    }
    return field.value.items;
  }

  /** The same for a list of texts; one whose brackets were forgotten is told, and read as what it is meant to be. */
  textItemsOf(field: Field, example: string): readonly (YamlNode | null)[] | undefined {
    const { key, value } = field;
    if (isNothing(value) || value?.kind !== 'text' || !isOnOneLine(value))
      return this.itemsOf(field, example);
    const message = `“${key.value}” is a list and needs brackets around its items, as in ${example}. It is read as one.`;
    this.report(message, key.span, 'warning');
    return itemsIn(value);
  }

  #reportKind(node: YamlNode | null, message: string, otherwise?: Span): void {
    const span = node?.span ?? otherwise ?? { start: 0, end: 0 };
    this.report(
      node?.kind === 'alias'
        ? 'References to other places of the file (*name) are not read here. Write the value itself.'
        : message,
      span,
    );
  }

  /**
   * The known key that is meant. One that is only near is reported and taken for it, so that what stands there is not lost,
   * unless the map has the known one as well.
   */
  #knownKey(
    key: string,
    span: Span,
    where: string,
    known: readonly string[],
    map: YamlMap,
  ): string | undefined {
    if (known.includes(key)) {
      return key;
    }
    const meant = nearestName(key, known);
    if (meant === undefined) {
      const message = `${capital(where)} has no “${key}”; it is left aside. Known are ${known.join(', ')}.`;
      this.report(message, span, 'warning');
      return undefined;
    }
    const isFree = !map.pairs.some(({ key: other }) => other?.kind === 'text' && other.text === meant);
    const consequence = isFree ? 'It is read as that.' : 'It is not read.';
    this.report(`${capital(where)} has no “${key}”. Did you mean “${meant}”? ${consequence}`, span);
    return isFree ? meant : undefined;
  }
}

function isOnOneLine({ text, style, span }: YamlText): boolean {
  return style === 'quoted' || text.length === span.end - span.start;
}

/** What stands between the commas of a text; a text in quotes is one item. */
function itemsIn(node: YamlText): readonly YamlText[] {
  if (node.style !== 'plain') return [node];
  return [...node.text.matchAll(/[^,\s][^,]*/g)].map(({ 0: text, index }) => {
    const start = node.span.start + index;
    return { ...node, text: text.trimEnd(), span: { start, end: start + text.trimEnd().length } };
  });
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
