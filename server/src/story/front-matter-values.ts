import type { Problem } from '../text/problem.ts';
import type { Span } from '../text/span.ts';
import type { YamlFault } from '../yaml/parse-yaml.ts';
import type { YamlNode, YamlPair } from '../yaml/yaml-node.ts';
import type { FrontMatterValue } from './story.ts';

/** A key of a map with what stands behind its colon; places are in the file. */
export interface Entry {
  readonly key: FrontMatterValue<string>;
  readonly value: EntryValue;
}

/** A value of a YAML text, every scalar as it was written; places are in the file. */
export type EntryValue =
  | { readonly kind: 'text'; readonly text: string; readonly span: Span }
  | { readonly kind: 'list'; readonly items: readonly EntryValue[]; readonly span: Span }
  | { readonly kind: 'map'; readonly entries: readonly Entry[]; readonly span: Span }
  | { readonly kind: 'nothing'; readonly span: Span };

/** A piece of YAML that was parsed by itself, at its place in the file. */
export class YamlPiece {
  readonly #text: string;
  readonly #by: number;
  readonly #problems: Problem[];

  /** `by` is what to add to an offset of `text` to get the file's; what is wrong is added to `problems`. */
  constructor(text: string, by: number, problems: Problem[]) {
    this.#text = text;
    this.#by = by;
    this.#problems = problems;
  }

  /** Adds what the library found wrong, in the writer's words; of several errors at one place the first. */
  report(errors: readonly YamlFault[]): void {
    for (const { code, span: place } of errors) {
      const span = this.#errorSpan(code, place);
      if (this.#isReported(span)) continue;
      const message = explanation(code, this.#text, span.start);
      this.#report(message, span, code === 'TAG_RESOLVE_FAILED' ? 'warning' : 'error');
    }
  }

  /** The entries of the piece's map; anything else but a map is reported, unless the library did. */
  entriesOf(contents: YamlNode | null): readonly Entry[] {
    if (contents?.kind === 'map') return this.#entries(contents.pairs);
    const span = lineSpan(this.#text, 0);
    if (!this.#isReported(span)) {
      const closed = /^\S+:\S/.test(this.#text.trimStart());
      this.#report(
        closed ? 'Put a space behind the colon: "key: value".' : 'This line is no entry; write "key: value".',
        span,
      );
    }
    return [];
  }

  #entries(pairs: readonly YamlPair[]): readonly Entry[] {
    const entries: Entry[] = [];
    for (const pair of pairs) {
      const span = this.#spanOf(pair.key) ?? this.#spanOf(pair.value);
      if (span === undefined) continue;
      if (pair.key?.kind !== 'text') {
        this.#report('A key must be a word or a few words.', span);
        continue;
      }
      const key = { value: pair.key.text, span: this.#placed(span) };
      entries.push({ key, value: this.#pairValue(pair.value, span) });
    }
    return entries;
  }

  #pairValue(node: YamlNode | null, key: Span): EntryValue {
    const span = this.#spanOf(node);
    // `title: Day 1: The Pond` gives a map behind the first colon; what was meant is the rest of the line.
    if (
      node?.kind === 'map' &&
      !node.flow &&
      span !== undefined &&
      !/[\r\n]/.test(this.#text.slice(key.end, span.start))
    ) {
      const line = lineSpan(this.#text.slice(span.start), span.start);
      return { kind: 'text', text: this.#text.slice(line.start, line.end), span: this.#placed(line) };
    }
    return this.#value(node, key);
  }

  #value(node: YamlNode | null, around: Span): EntryValue {
    const found = this.#spanOf(node) ?? around;
    const span = this.#placed(found);
    if (node?.kind === 'alias') {
      this.#report(
        `*${node.name} points to another place, which is not followed; write the value itself.`,
        found,
      );
      return { kind: 'nothing', span };
    }
    if (node?.kind === 'map') return { kind: 'map', entries: this.#entries(node.pairs), span };
    if (node?.kind === 'list')
      return { kind: 'list', items: node.items.map((item) => this.#value(item, found)), span };
    const text = node?.kind === 'text' ? node.text.trim() : '';
    const plain = node?.kind === 'text' && node.style === 'plain';
    if (text === '') return { kind: 'nothing', span: this.#placed(around) };
    if (plain && (text === '~' || text === 'null')) return { kind: 'nothing', span };
    if (plain && /[\r\n]/.test(this.#text.slice(found.start, found.end))) {
      this.#report(
        'These lines run together; put a dash before each item, or write each as "key: value".',
        found,
      );
      return { kind: 'nothing', span };
    }
    return { kind: 'text', text, span };
  }

  #errorSpan(code: YamlFault['code'], place: Span): Span {
    const text = this.#text;
    const start = Math.min(place.start, text.length);
    const end = Math.min(Math.max(place.end, start), text.length);
    if (code === 'BLOCK_AS_IMPLICIT_KEY' || code === 'TAB_AS_INDENT') {
      const rest = lineSpan(text.slice(start), start);
      if (rest.end > rest.start) return rest;
    }
    // An error at a line's end is shown under the line, where it can be seen.
    return text.slice(start, end).trim() === ''
      ? lineSpan(text.slice(0, start).trimEnd(), 0, true)
      : { start, end };
  }

  /** A node's place in the piece, without the white space behind it. */
  #spanOf(node: YamlNode | null): Span | undefined {
    if (node === null) return undefined;
    const { start, end } = node.span;
    return { start, end: start + this.#text.slice(start, end).trimEnd().length };
  }

  #isReported(span: Span): boolean {
    const { start, end } = this.#placed(span);
    return this.#problems.some((known) => known.span.start <= end && known.span.end >= start);
  }

  #report(message: string, span: Span, severity: Problem['severity'] = 'error'): void {
    this.#problems.push({ message, span: this.#placed(span), severity });
  }

  #placed(span: Span): Span {
    return { start: this.#by + span.start, end: this.#by + span.end };
  }
}

function explanation(code: YamlFault['code'], text: string, at: number): string {
  switch (code) {
    case 'TAG_RESOLVE_FAILED':
      return 'Tags have no meaning here; leave out the word that begins with an exclamation mark, or put the value in quotation marks.';
    case 'MISSING_CHAR':
      return 'Something is missing here: a closing quotation mark, a bracket, or the colon behind a key.';
    case 'BAD_INDENT':
      return 'A closing bracket is missing, or a line is not indented like its neighbours.';
    case 'BLOCK_AS_IMPLICIT_KEY':
      return 'A value that holds a colon must stand in quotation marks.';
    case 'TAB_AS_INDENT':
      return 'Indent with spaces; YAML allows no tab here.';
    case 'BAD_SCALAR_START':
      return `A value that begins with ${text[at] ?? 'this mark'} must stand in quotation marks.`;
    default:
      return 'This cannot be read as YAML; write "key: value", and put a value with unusual marks in quotation marks.';
  }
}

/** The first line of a text that is not blank (or its last line), moved by `by`, without the white space around it. */
export function lineSpan(text: string, by: number, last = false): Span {
  const lead = last ? Math.max(text.lastIndexOf('\n'), text.lastIndexOf('\r')) + 1 : 0;
  const line = /[^\s][^\r\n]*/.exec(text.slice(lead));
  const start = lead + (line?.index ?? 0);
  return { start: by + start, end: by + start + (line?.[0].trimEnd().length ?? 0) };
}
