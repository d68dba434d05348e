import { isAlias, isMap, isScalar, isSeq, type Node, parseDocument, type YAMLError } from 'yaml';
import type { Problem } from '../text/problem.ts';
import type { Span } from '../text/span.ts';
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

/** The entries of a front matter and what is wrong with their writing. */
export interface Entries {
  readonly entries: readonly Entry[];
  readonly problems: readonly Problem[];
}

/** The most that is read of a front matter, of one of its entries (code units), and of brackets or dashes in one. */
const most = { units: 100_000, entryUnits: 20_000, nesting: 40, items: 400 } as const;

/**
 * Reads the top level of a YAML map, an entry at a time, so that a broken line spoils only itself; an entry of many
 * lines that is broken is read again line by line. `start` is the place of `content` in the file. Aliases are refused
 * (no bomb can go off), tags are reported and ignored, and what is nested too deeply is not given to the YAML library.
 */
export function readEntries(content: string, start: number): Entries {
  const problems: Problem[] = [];
  const entries: Entry[] = [];
  let readable = content;
  if (content.length > most.units) {
    readable = content.slice(0, most.units);
    const span = { start: start + most.units, end: start + content.length };
    problems.push({
      message: 'The front matter is too long; from here on it is not read.',
      span,
      severity: 'error',
    });
  }
  for (const chunk of topLevelChunks(readable)) {
    entries.push(...readChunk(chunk.text, start + chunk.start, problems));
  }
  return { entries, problems };
}

interface Chunk {
  readonly text: string;
  readonly start: number;
}

/** A text cut before every line that begins an entry; blank lines and comments stay with the entry before them. */
function chunks(text: string, begins: (line: string) => boolean): readonly Chunk[] {
  const found: Chunk[] = [];
  let start = 0;
  for (const match of text.matchAll(/[^\r\n]*(?:\r\n|\r|\n|$)/g)) {
    if (match.index > start && begins(match[0])) {
      found.push({ text: text.slice(start, match.index), start });
      start = match.index;
    }
  }
  if (start < text.length) found.push({ text: text.slice(start), start });
  return found;
}

function topLevelChunks(text: string): readonly Chunk[] {
  // A map in braces over several lines is one entry.
  if (/^\s*\{/.test(text)) return [{ text, start: 0 }];
  return chunks(text, (line) => !/^(?:[ \t\r\n#\]}]|-(?:[ \t\r\n]|$)|$)/.test(line));
}

function readChunk(text: string, start: number, problems: Problem[]): readonly Entry[] {
  if (!/^[^\S\r\n]*[^\s#]/m.test(text)) return [];
  const tooMuch = excess(text);
  if (tooMuch !== undefined) {
    problems.push({ message: tooMuch, span: lineSpan(text, start), severity: 'error' });
    return [];
  }
  const document = parse(text);
  const children = document.errors.length === 0 ? [] : childChunks(text);
  if (children.length < 2) {
    report([...document.errors, ...document.warnings], text, start, problems);
    return entriesOf(document.contents, text, start, problems);
  }
  // A line of a longer entry is broken: each line is read alone under the entry's first line.
  const head = text.slice(0, children[0]?.start ?? 0);
  const entries: Entry[] = [];
  for (const child of children.slice(0, most.items)) {
    const by = start + child.start - head.length;
    const alone = head + child.text;
    const read = parse(alone);
    const inChild = [...read.errors, ...read.warnings].filter((error) => error.pos[0] >= head.length);
    report(inChild, alone, by, problems);
    for (const entry of entriesOf(read.contents, alone, by, problems)) {
      entries.push({
        ...entry,
        key: { value: entry.key.value, span: { start: start, end: start + entry.key.value.length } },
      });
    }
  }
  return joined(entries);
}

/** The lines under an entry's first line, each with those that are indented more. */
function childChunks(text: string): readonly Chunk[] {
  const first = /[\r\n]([ \t]*(?:-[ \t])?)[^\s#]/.exec(text);
  const indent = (first?.[1] ?? '').replace('-', ' ').trimEnd().length;
  const width = /^[ \t]*/.exec(first?.[1] ?? '')?.[0].length ?? 0;
  const pieces = chunks(text, (line) => {
    const space = /^[ \t]*/.exec(line)?.[0].length ?? 0;
    return space <= Math.max(width, indent) && line.trim() !== '' && line[space] !== '#';
  });
  return pieces.slice(1);
}

/** Entries of one key as one: their lists and maps put together in order. */
function joined(parts: readonly Entry[]): readonly Entry[] {
  const [first] = parts;
  if (first === undefined) return [];
  const span = { start: first.value.span.start, end: parts.at(-1)?.value.span.end ?? first.value.span.end };
  const values = parts.map((part) => part.value);
  const entries = values.flatMap((value) => (value.kind === 'map' ? value.entries : []));
  const items = values.flatMap((value) => (value.kind === 'list' ? value.items : []));
  if (entries.length > 0) return [{ key: first.key, value: { kind: 'map', entries, span } }];
  return [{ key: first.key, value: { kind: 'list', items, span } }];
}

/** Why a text is not given to the YAML library, which can run out of memory on deep nesting. */
function excess(text: string): string | undefined {
  if (text.length > most.entryUnits) return 'This entry is too long and is not read.';
  const brackets = text.match(/[[{]/g)?.length ?? 0;
  if (brackets > most.nesting) return 'This entry holds too many brackets and is not read.';
  if (/(?:[-?:][ \t]+){9}/.test(text) || /(?:^|[\r\n])[ \t]{200}/.test(text)) {
    return 'This entry is nested too deeply and is not read.';
  }
  return undefined;
}

function parse(text: string) {
  return parseDocument(text, {
    schema: 'failsafe',
    uniqueKeys: false,
    prettyErrors: false,
    logLevel: 'silent',
  });
}

function report(errors: readonly Error[], text: string, by: number, problems: Problem[]): void {
  for (const error of errors) {
    const { code, pos } = error as YAMLError;
    const start = Math.min(pos[0], text.length);
    const end = Math.min(Math.max(pos[1], start), text.length);
    // An error at a line's end is shown under the line, where it can be seen.
    const span =
      text.slice(start, end).trim() === ''
        ? lineSpan(text.slice(0, start).trimEnd(), 0, true)
        : { start, end };
    const message = explanation(code, text, start);
    const place = { start: by + span.start, end: by + span.end };
    // The library often reports one slip several times over.
    if (problems.some((known) => known.span.start <= place.end && known.span.end >= place.start)) continue;
    problems.push({ message, span: place, severity: code === 'TAG_RESOLVE_FAILED' ? 'warning' : 'error' });
  }
}

function explanation(code: YAMLError['code'], text: string, at: number): string {
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

function entriesOf(contents: unknown, text: string, by: number, problems: Problem[]): readonly Entry[] {
  if (!isMap(contents)) {
    const span = lineSpan(text, by);
    if (!problems.some((known) => known.span.start < span.end && known.span.end > span.start)) {
      const colon = /^\S+:\S/.test(text.trimStart());
      const message = colon
        ? 'Put a space behind the colon: "key: value".'
        : 'This line is no entry; write "key: value".';
      problems.push({ message, span, severity: 'error' });
    }
    return [];
  }
  return mapEntries(contents.items, by, problems);
}

function mapEntries(
  pairs: readonly { readonly key: unknown; readonly value: unknown }[],
  by: number,
  problems: Problem[],
): readonly Entry[] {
  const entries: Entry[] = [];
  for (const pair of pairs) {
    if (!isScalar(pair.key)) {
      const span = spanOf(pair.key, by) ?? spanOf(pair.value, by);
      if (span) problems.push({ message: 'A key must be a word or a few words.', span, severity: 'error' });
      continue;
    }
    const span = spanOf(pair.key, by) ?? { start: by, end: by };
    const key = { value: String(pair.key.value ?? ''), span };
    entries.push({ key, value: nodeValue(pair.value, by, span, problems) });
  }
  return entries;
}

function nodeValue(node: unknown, by: number, around: Span, problems: Problem[]): EntryValue {
  const span = spanOf(node, by) ?? around;
  if (isAlias(node)) {
    const message = `Write the value itself: *${node.source} points to another place, which is not followed here.`;
    problems.push({ message, span, severity: 'error' });
    return { kind: 'nothing', span };
  }
  if (isMap(node)) return { kind: 'map', entries: mapEntries(node.items, by, problems), span };
  if (isSeq(node)) {
    return { kind: 'list', items: node.items.map((item) => nodeValue(item, by, span, problems)), span };
  }
  const text = isScalar(node) ? String(node.value ?? '').trim() : '';
  const quoted = isScalar(node) && node.type !== undefined && node.type !== 'PLAIN';
  if (text === '' || (!quoted && text === '~') || (!quoted && text === 'null')) {
    return { kind: 'nothing', span: text === '' ? around : span };
  }
  return { kind: 'text', text, span };
}

function spanOf(node: unknown, by: number): Span | undefined {
  const range = (node as Partial<Node> | null)?.range;
  return range ? { start: by + range[0], end: by + range[1] } : undefined;
}

/** The first line of a text (or its last) without the white space around it. */
function lineSpan(text: string, by: number, last = false): Span {
  const lead = last ? Math.max(text.lastIndexOf('\n'), text.lastIndexOf('\r')) + 1 : 0;
  const line = /[^\s][^\r\n]*/.exec(text.slice(lead));
  const start = lead + (line?.index ?? 0);
  return { start: by + start, end: by + start + (line?.[0].trimEnd().length ?? 0) };
}
