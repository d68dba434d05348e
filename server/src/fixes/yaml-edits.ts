import { endOfLine, startOfNextLine } from '../text/lines.ts';
import type { Span } from '../text/span.ts';
import { readYamlNodes } from '../yaml/read-yaml.ts';
import type { YamlList, YamlMap, YamlNode, YamlPair } from '../yaml/yaml-node.ts';
import { lineEndOf, type TextEdit } from './text-edit.ts';
import { holds, isEmpty, keyOf, quoted } from './yaml-nodes.ts';

/** A map in a file of YAML, such as a front matter or a lesson. */
export interface MapPlace {
  /** The whole file. */
  readonly text: string;
  /** From the first key (or brace) of the map to its end. */
  readonly span: Span;
}

/**
 * Puts an item at the end of the list under a key, in the style the list has; makes the list, behind the last of the keys
 * `after` that is there, when the key is missing. Everything else stays as it is, comments and layout too. Undefined
 * when the text is broken, the item is there already or the value is no list of words.
 */
export function withItem(
  place: MapPlace,
  key: string,
  item: string,
  after: readonly string[],
): TextEdit | undefined {
  const map = mapAt(place);
  if (map === undefined) return undefined;
  const pair = map.pair(key);
  if (pair === undefined) return map.newPair(after, () => `${key}: [${quoted(item)}]`);
  const value = pair.value;
  if (value === null || isEmpty(value)) return map.behindColon(pair, ` [${quoted(item)}]`);
  if (value.kind === 'list') return holds(value, item) ? undefined : map.newItem(value, quoted(item));
  if (value.kind !== 'text' || value.text === item) return undefined;
  return map.asList(value, quoted(item));
}

/**
 * Puts an entry without a value at the end of the map under a key, in the style the map has (in a list of words, as one
 * more word), or makes the map. As {@link withItem} else.
 */
export function withEntry(
  place: MapPlace,
  key: string,
  entry: string,
  after: readonly string[],
): TextEdit | undefined {
  const map = mapAt(place);
  if (map === undefined) return undefined;
  const pair = map.pair(key);
  const written = quoted(entry);
  if (pair === undefined) {
    return map.newPair(after, (indent, isFlow) =>
      isFlow ? `${key}: { ${written}: "" }` : `${key}:${map.lineEnd}${indent}  ${written}:`,
    );
  }
  const value = pair.value;
  if (value === null || isEmpty(value)) {
    const indent = map.indentOf(pair);
    return indent === undefined
      ? map.behindColon(pair, ` { ${written}: "" }`)
      : map.behindLine(pair, `${indent}  ${written}:`);
  }
  if (value.kind === 'list') return holds(value, entry) ? undefined : map.newItem(value, written);
  if (value.kind === 'map') return map.newEntry(value, written, entry);
  return value.kind === 'text' && value.text !== entry ? map.asList(value, written) : undefined;
}

/** Takes the entry that stands at a place out of the map or list under a key; the key too when nothing else is under it. */
export function withoutEntry(place: MapPlace, key: string, at: Span): TextEdit | undefined {
  const map = mapAt(place);
  const pair = map?.pair(key);
  return map && pair && map.without(pair, at);
}

class EditableMap {
  readonly lineEnd: string;
  readonly #text: string;
  readonly #by: number;
  readonly #map: YamlMap;

  /** `by` is what has to be added to the offsets of the nodes. */
  constructor(text: string, by: number, map: YamlMap) {
    this.#text = text;
    this.#by = by;
    this.#map = map;
    this.lineEnd = lineEndOf(text);
  }

  pair(key: string): YamlPair | undefined {
    return this.#map.pairs.find((pair) => keyOf(pair) === key);
  }

  /** The white space in front of a pair that begins its line; undefined in braces. */
  indentOf(pair: YamlPair): string | undefined {
    const start = this.#start(pair.key);
    if (start === undefined || this.#map.flow) return undefined;
    // The first key of a lesson stands behind a dash.
    return this.#text.slice(this.#lineStart(start), start).replace(/[^\t]/g, ' ');
  }

  newPair(
    after: readonly string[],
    written: (indent: string, isFlow: boolean) => string,
  ): TextEdit | undefined {
    const known = this.#map.pairs.filter((pair) => after.includes(keyOf(pair) ?? ''));
    const before = known.at(-1) ?? this.#map.pairs.at(-1);
    if (before === undefined) return undefined;
    const end = this.#endOf(before);
    if (end === undefined) return undefined;
    if (this.#map.flow) return inserted(end, `, ${written('', true)}`);
    const indent = this.indentOf(before);
    if (indent === undefined) return undefined;
    return inserted(endOfLine(this.#text, end), this.lineEnd + indent + written(indent, false));
  }

  behindColon(pair: YamlPair, text: string): TextEdit | undefined {
    const colon = this.#colonOf(pair);
    return colon === undefined ? undefined : inserted(colon + 1, text);
  }

  behindLine(pair: YamlPair, line: string): TextEdit | undefined {
    const colon = this.#colonOf(pair);
    return colon === undefined ? undefined : inserted(endOfLine(this.#text, colon), this.lineEnd + line);
  }

  asList(value: YamlNode, item: string): TextEdit | undefined {
    const span = this.#spanOf(value);
    if (span === undefined) return undefined;
    const written = this.#text.slice(span.start, span.end);
    return /[\r\n,[\]{}]/.test(written) ? undefined : { span, text: `[${written}, ${item}]` };
  }

  newItem(list: YamlList, item: string): TextEdit | undefined {
    const last = list.items.at(-1);
    const span = this.#spanOf(list);
    if (span === undefined) return undefined;
    if (list.flow) return this.#inBrackets(span, this.#spanOf(last), item);
    const end = this.#spanOf(last);
    if (end === undefined) return undefined;
    const dash = this.#text.lastIndexOf('-', end.start);
    const lineStart = this.#lineStart(end.start);
    if (dash < lineStart) return undefined;
    const indent = this.#text.slice(lineStart, dash).replace(/[^\t]/g, ' ');
    return inserted(endOfLine(this.#text, end.end), `${this.lineEnd}${indent}- ${item}`);
  }

  newEntry(map: YamlMap, written: string, entry: string): TextEdit | undefined {
    if (map.pairs.some((pair) => keyOf(pair) === entry)) return undefined;
    const last = map.pairs.at(-1);
    const span = this.#spanOf(map);
    if (span === undefined) return undefined;
    const inner = new EditableMap(this.#text, this.#by, map);
    if (map.flow) {
      const end = last && inner.#endOf(last);
      const at = end === undefined ? undefined : { start: end, end };
      return this.#inBrackets(span, at, `${written}: ""`);
    }
    if (last === undefined) return undefined;
    const indent = inner.indentOf(last);
    const end = inner.#endOf(last);
    if (indent === undefined || end === undefined) return undefined;
    return inserted(endOfLine(this.#text, end), `${this.lineEnd}${indent}${written}:`);
  }

  without(pair: YamlPair, at: Span): TextEdit | undefined {
    const value = pair.value;
    if (value === null) return undefined;
    const children = value.kind === 'map' ? value.pairs : value.kind === 'list' ? value.items : [];
    if (children.length <= 1) return this.#withoutPair(this.#map, pair);
    if (value.kind === 'map') {
      const found = value.pairs.find((each) => this.#start(each.key) === at.start);
      return found && new EditableMap(this.#text, this.#by, value).#withoutPair(value, found);
    }
    if (value.kind !== 'list') return undefined;
    const index = value.items.findIndex((item) => {
      const span = this.#spanOf(item);
      return span !== undefined && span.start <= at.start && at.end <= span.end;
    });
    const spans = value.items.map((item) => this.#spanOf(item));
    const own = spans[index];
    if (own === undefined) return undefined;
    return value.flow ? this.#withoutPart(own, spans[index - 1], spans[index + 1]) : this.#withoutLines(own);
  }

  #withoutPair(map: YamlMap, pair: YamlPair): TextEdit | undefined {
    const spanOfPair = (each: YamlPair | undefined): Span | undefined => {
      const start = each && this.#start(each.key);
      const end = each && this.#endOf(each);
      return start === undefined || end === undefined ? undefined : { start, end };
    };
    const own = spanOfPair(pair);
    if (own === undefined) return undefined;
    if (!map.flow) return this.#withoutLines(own);
    const index = map.pairs.indexOf(pair);
    return this.#withoutPart(own, spanOfPair(map.pairs[index - 1]), spanOfPair(map.pairs[index + 1]));
  }

  #withoutLines({ start, end }: Span): TextEdit | undefined {
    const from = this.#lineStart(start);
    // Behind a lesson's dash nothing can be taken away without the dash.
    if (!/^[ \t]*(?:- *)?$/.test(this.#text.slice(from, start))) return undefined;
    return { span: { start: from, end: startOfNextLine(this.#text, endOfLine(this.#text, end)) }, text: '' };
  }

  #withoutPart(own: Span, before: Span | undefined, next: Span | undefined): TextEdit {
    if (next !== undefined) return { span: { start: own.start, end: next.start }, text: '' };
    return { span: { start: before?.end ?? own.start, end: own.end }, text: '' };
  }

  /** One more item in brackets or braces: behind the last, on a line of its own when that has one. */
  #inBrackets(span: Span, last: Span | undefined, item: string): TextEdit | undefined {
    if (last === undefined) return inserted(span.start + 1, item);
    const lineStart = this.#lineStart(last.start);
    const ownLine = lineStart > span.start && this.#text.slice(lineStart, last.start).trim() === '';
    const lead = ownLine ? this.lineEnd + this.#text.slice(lineStart, last.start) : ' ';
    const rest = this.#text
      .slice(last.end, span.end - 1)
      .replace(/#[^\r\n]*/g, (note) => ' '.repeat(note.length));
    const comma = rest.indexOf(',');
    return comma === -1
      ? inserted(last.end, `,${lead}${item}`)
      : inserted(last.end + comma + 1, `${lead}${item}${ownLine ? ',' : ''}`);
  }

  #colonOf(pair: YamlPair): number | undefined {
    const key = pair.key;
    const end = this.#spanOf(key)?.end;
    if (end === undefined) return undefined;
    const colon = this.#text.indexOf(':', end);
    return colon === -1 || this.#text.slice(end, colon).trim() !== '' ? undefined : colon;
  }

  #endOf(pair: YamlPair): number | undefined {
    const value = pair.value;
    if (value !== null && !isEmpty(value)) return this.#spanOf(value)?.end;
    const colon = this.#colonOf(pair);
    return colon === undefined ? undefined : colon + 1;
  }

  #start(node: YamlNode | null | undefined): number | undefined {
    return this.#spanOf(node)?.start;
  }

  /** In the file, without the white space that the library counts with a text of several lines. */
  #spanOf(node: YamlNode | null | undefined): Span | undefined {
    if (!node) return undefined;
    const start = node.span.start + this.#by;
    return { start, end: start + this.#text.slice(start, node.span.end + this.#by).trimEnd().length };
  }

  #lineStart(at: number): number {
    return Math.max(this.#text.lastIndexOf('\n', at - 1), this.#text.lastIndexOf('\r', at - 1)) + 1;
  }
}

/** The map of a place, when its text is sound. It is read by itself, moved to the column where it stands. */
function mapAt({ text, span }: MapPlace): EditableMap | undefined {
  const lineStart =
    Math.max(text.lastIndexOf('\n', span.start - 1), text.lastIndexOf('\r', span.start - 1)) + 1;
  const column = span.start - lineStart;
  const { contents, errors } = readYamlNodes(' '.repeat(column) + text.slice(span.start, span.end));
  return errors.length > 0 || contents?.kind !== 'map'
    ? undefined
    : new EditableMap(text, lineStart, contents);
}

function inserted(at: number, text: string): TextEdit {
  return { span: { start: at, end: at }, text };
}
