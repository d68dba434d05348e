import { withPlainSpaces } from '../text/plain-spaces.ts';
import type { Problem } from '../text/problem.ts';
import { shifted } from '../text/span.ts';
import { readYamlNodes } from '../yaml/read-yaml.ts';
import { type Entry, lineSpan, YamlPiece } from './front-matter-values.ts';

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
  if (content.length > most.units) {
    const message = 'The front matter is too long; from here on it is not read.';
    const span = { start: start + most.units, end: start + content.length };
    problems.push({ message, span, severity: 'error' });
  }
  const readable = withoutTabs(plainLineEnds(withPlainSpaces(content.slice(0, most.units))), start, problems);
  const chunks = topLevelChunks(readable);
  const beyond = chunks[most.items];
  if (beyond !== undefined) {
    const span = lineSpan(beyond.text, start + beyond.start);
    problems.push({
      message: 'The front matter has too many entries; from here on it is not read.',
      span,
      severity: 'error',
    });
  }
  for (const chunk of chunks.slice(0, most.items)) {
    for (const entry of readChunk(chunk.text, start + chunk.start, problems)) entries.push(entry);
  }
  return { entries, problems };
}

/** YAML does not know the lone CR for a line end; the text keeps its length. */
function plainLineEnds(text: string): string {
  return text.replace(/\r(?!\n)/g, '\n');
}

/** Reports lines indented with tabs, once, and gives them spaces; the text keeps its length. */
function withoutTabs(text: string, start: number, problems: Problem[]): string {
  return text.replace(/^[ \t]+(?=[^\s#])/gm, (indent: string, at: number) => {
    if (!indent.includes('\t')) return indent;
    const span = { start: start + at, end: start + at + indent.length };
    problems.push({ message: 'Indent with spaces; YAML allows no tab here.', span, severity: 'error' });
    return ' '.repeat(indent.length);
  });
}

interface Chunk {
  readonly text: string;
  readonly start: number;
}

/** A text cut before every line that begins an entry; blank lines and comments stay with the entry before them. */
function cutBefore(text: string, begins: (line: string) => boolean): readonly Chunk[] {
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
  return cutBefore(text, (line) => !/^(?:[ \t\r\n#\]}]|-(?:[ \t\r\n]|$)|$)/.test(line));
}

function readChunk(text: string, start: number, problems: Problem[]): readonly Entry[] {
  if (!/^[^\S\r\n\u2028\u2029]*[^\s#]/m.test(text)) return [];
  const tooMuch = excess(text);
  if (tooMuch !== undefined) {
    problems.push({ message: tooMuch, span: lineSpan(text, start), severity: 'error' });
    return [];
  }
  const document = readYamlNodes(text);
  const children = document.errors.length === 0 ? [] : childChunks(text);
  if (children.length < 2) {
    const piece = new YamlPiece(text, start, problems);
    piece.report([...document.errors, ...document.warnings]);
    return piece.entriesOf(document.contents);
  }
  // A line of a longer entry is broken: each line is read alone under the entry's first line.
  const head = text.slice(0, children[0]?.start ?? 0);
  const entries: Entry[] = [];
  for (const child of children.slice(0, most.items)) {
    const by = start + child.start - head.length;
    const alone = head + child.text;
    const read = readYamlNodes(alone);
    const piece = new YamlPiece(alone, by, problems);
    piece.report([...read.errors, ...read.warnings].filter((error) => error.span.start >= head.length));
    for (const { key, value } of piece.entriesOf(read.contents)) {
      if (value.kind === 'text') {
        const message = 'A colon is missing here, as in pond: a small lake.';
        problems.push({ message, span: value.span, severity: 'error' });
      }
      entries.push({ key: { value: key.value, span: shifted(key.span, start - by) }, value });
    }
  }
  return joined(entries);
}

/** The lines under an entry's first line, each with those that are indented more. */
function childChunks(text: string): readonly Chunk[] {
  const first = /[\r\n]([ \t]*(?:-[ \t])?)[^\s#]/.exec(text);
  const indent = (first?.[1] ?? '').replace('-', ' ').trimEnd().length;
  const width = /^[ \t]*/.exec(first?.[1] ?? '')?.[0].length ?? 0;
  const pieces = cutBefore(text, (line) => {
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
