import { withPlainSpaces } from '../text/plain-spaces.ts';
import type { Problem } from '../text/problem.ts';
import type { Span } from '../text/span.ts';
import type { ParsedYaml, YamlFault } from '../yaml/parse-yaml.ts';
import { readYamlNodes } from '../yaml/read-yaml.ts';
import type { YamlNode } from '../yaml/yaml-node.ts';

/** A YAML text as far as it could be understood. */
export interface YamlSource {
  /** The tree of the text, every scalar a string; null for a text without content. */
  readonly contents: YamlNode | null;
  /** Where the text breaks the rules of YAML. */
  readonly problems: readonly Problem[];
  /** The lines that were left out so that the others could be read; offsets of the text. */
  readonly leftOut: readonly Span[];
}

/**
 * Reads YAML so that a broken line spoils only itself. The library gives up the rest of a block after an error;
 * therefore the line to blame is blanked out, in place so that offsets stay, and the text is read again.
 * Every scalar is a string: `name: 3` is "3", and `no` is the word *no*.
 */
export function readYaml(text: string): YamlSource {
  const problems: Problem[] = [];
  const leftOut: Span[] = [];
  let mended = withPlainSpaces(text);
  let document = readYamlNodes(mended);
  if (document.errors.some((error) => error.code === 'TAB_AS_INDENT')) {
    problems.push(...tabProblems(text));
    mended = withoutTabs(mended);
    document = readYamlNodes(mended);
  }
  let budget = mendingBudget;
  for (
    let error = firstOf(document.errors);
    error !== undefined && budget > 0;
    error = firstOf(document.errors)
  ) {
    let best: { mend: Mend; text: string; document: ParsedYaml } | undefined;
    for (const mend of mendsAt(mended, error.span.start, document)) {
      const candidate = blanked(mended, mend.blank);
      const parsed = readYamlNodes(candidate);
      budget -= text.length + 1;
      if (parsed.errors.length < (best?.document.errors.length ?? Number.POSITIVE_INFINITY)) {
        best = { mend, text: candidate, document: parsed };
      }
      if (parsed.errors.length === 0 || budget <= 0) {
        break;
      }
    }
    if (best === undefined) {
      break;
    }
    const { mend } = best;
    if (
      !problems.some(
        (problem) => problem.span.start >= mend.line.start && problem.span.start <= mend.line.end,
      )
    ) {
      const span = within(text, mend.line, error.span) ?? trimmed(text, mend.line);
      problems.push({
        message: `${explanation(error, text)} This line is not read.`,
        span,
        severity: 'error',
      });
    }
    leftOut.push(mend.line);
    mended = best.text;
    document = best.document;
  }
  for (const error of document.errors) {
    problems.push({ message: explanation(error, text), span: inText(error.span, text), severity: 'error' });
  }
  return { contents: document.contents, problems, leftOut };
}

/** Code units that may be read again while mending, so that a large broken file cannot hold up the editor. */
const mendingBudget = 500_000;
/** How far above the place where the library stumbles the line to blame is looked for. */
const linesAbove = 2;

function firstOf(errors: readonly YamlFault[]): YamlFault | undefined {
  return errors.reduce<YamlFault | undefined>(
    (first, error) => (first === undefined || error.span.start < first.span.start ? error : first),
    undefined,
  );
}

/** A way to mend a text: `line` is to blame, `blank` is what to take out. */
interface Mend {
  readonly line: Span;
  readonly blank: Span;
}

/**
 * The line of the error without its list dash, the whole line, the same of the next line, the line where a quotation or list begins that runs on to
 * the error, the lines above, and last the line with all below it.
 */
function mendsAt(text: string, offset: number, document: ParsedYaml): Mend[] {
  let line = lineAt(text, Math.min(offset, text.length));
  while (line.start > 0 && isBlank(text, line)) {
    line = lineAt(text, line.start - 1);
  }
  const mends = [...withoutDash(text, line), { line, blank: line }];
  const next = nextLine(text, line);
  if (next !== undefined) {
    mends.push(...withoutDash(text, next), { line: next, blank: next });
  }
  for (const opened of openedBefore(offset, text, document)) {
    const opening = lineAt(text, opened.start);
    mends.push(...withoutDash(text, opening), { line: opening, blank: opening });
    mends.push({ line: opening, blank: { start: opening.start, end: Math.max(opening.end, line.start) } });
  }
  let above = line;
  for (let count = 0; count < linesAbove && above.start > 0; count++) {
    above = lineAt(text, above.start - 1);
    mends.push({ line: above, blank: { start: above.start + dashOf(text, above), end: line.start } });
  }
  const below = withAllBelow(text, line);
  return below.end === line.end ? mends : [...mends, { line, blank: below }];
}

function nextLine(text: string, line: Span): Span | undefined {
  let next = line;
  while (next.end < text.length) {
    next = lineAt(text, next.end + 1);
    if (!isBlank(text, next)) {
      return next;
    }
  }
  return undefined;
}

/** Keeps the dash, so that the lesson stays a lesson when only its first line is bad. */
function withoutDash(text: string, line: Span): Mend[] {
  const dash = dashOf(text, line);
  return dash === 0 ? [] : [{ line, blank: { start: line.start + dash, end: line.end } }];
}

function dashOf(text: string, line: Span): number {
  return /^\s*(?:- +)+(?=\S)/.exec(text.slice(line.start, line.end))?.[0].length ?? 0;
}

/** The last quotation and the last list or group in brackets that begin before `offset` and run over more than a line. */
function openedBefore(offset: number, text: string, { contents }: ParsedYaml): Span[] {
  let quotation: Span | undefined;
  let list: Span | undefined;
  const look = (node: YamlNode | null): void => {
    if (node === null) return;
    const { start, end } = node.span;
    if (start < offset && text.slice(start, end).includes('\n')) {
      if (node.kind === 'text' && node.style === 'quoted') quotation = node.span;
      else if ((node.kind === 'list' || node.kind === 'map') && node.flow) list = node.span;
    }
    if (node.kind === 'list') node.items.forEach(look);
    if (node.kind === 'map') {
      for (const { key, value } of node.pairs) {
        look(key);
        look(value);
      }
    }
  };
  look(contents);
  return [quotation, list].filter((span) => span !== undefined);
}

function withAllBelow(text: string, line: Span): Span {
  const indent = indentOf(text, line);
  let end = line.end;
  while (end < text.length) {
    const next = lineAt(text, end + 1);
    if (!isBlank(text, next) && indentOf(text, next) <= indent) {
      break;
    }
    end = next.end;
  }
  return { start: line.start, end };
}

function lineAt(text: string, offset: number): Span {
  const start = offset === 0 ? 0 : text.lastIndexOf('\n', offset - 1) + 1;
  const end = text.indexOf('\n', offset);
  return { start, end: end === -1 ? text.length : end };
}

function isBlank(text: string, line: Span): boolean {
  return text.slice(line.start, line.end).trim() === '';
}

function indentOf(text: string, line: Span): number {
  return text.slice(line.start, line.end).search(/\S|$/);
}

function blanked(text: string, span: Span): string {
  return (
    text.slice(0, span.start) +
    text.slice(span.start, span.end).replace(/[^\r\n]/g, ' ') +
    text.slice(span.end)
  );
}

function tabProblems(text: string): Problem[] {
  return [...text.matchAll(/^ *\t[ \t]*(?=\S)/gm)].map((match) => ({
    message: 'This line is indented with a tab, which YAML does not allow. Indent with spaces.',
    span: { start: match.index, end: match.index + match[0].length },
    severity: 'error',
  }));
}

function withoutTabs(text: string): string {
  return text.replace(/^[ \t]+/gm, (indent) => indent.replaceAll('\t', ' '));
}

function within(text: string, line: Span, { start, end }: Span): Span | undefined {
  const span = { start, end: Math.max(start + 1, Math.min(end, line.end)) };
  return start >= line.start && start < line.end && !isBlank(text, span) ? span : undefined;
}

function trimmed(text: string, line: Span): Span {
  const content = text.slice(line.start, line.end);
  const start = line.start + content.search(/\S|$/);
  return { start, end: Math.max(start, line.start + content.trimEnd().length) };
}

function inText({ start, end }: Span, text: string): Span {
  const from = Math.min(start, text.length);
  return { start: from, end: Math.max(from, Math.min(end, text.length)) };
}

function explanation(error: YamlFault, text: string): string {
  switch (error.code) {
    case 'BAD_INDENT':
      if (error.message.includes(' ]')) {
        return 'This list has no closing ].';
      }
      return error.message.includes(' }')
        ? 'This group has no closing }.'
        : 'This line does not stand under its neighbours; give it the same number of spaces in front.';
    case 'MISSING_CHAR':
      if (error.message.startsWith('Missing closing')) {
        return `A quotation mark is opened here and never closed. A value with an apostrophe in front goes in double quotes: "'s".`;
      }
      return error.message.startsWith('Sequence item')
        ? 'This line does not stand under its neighbours; give it the same number of spaces in front.'
        : 'A colon and a space are missing here, as in “title: The Red Net”.';
    case 'MULTILINE_IMPLICIT_KEY':
      return 'A colon and a space are missing here, as in “title: The Red Net”.';
    case 'BLOCK_AS_IMPLICIT_KEY':
      return error.message.startsWith('Nested')
        ? 'A colon with a space after it needs the whole text in quotes, as in title: "Day 1: The Pond".'
        : 'This line does not stand under its neighbours; give it the same number of spaces in front.';
    case 'BAD_SCALAR_START':
      return `A value that begins with ${text[error.span.start] ?? 'this sign'} needs quotes around it.`;
    case 'UNEXPECTED_TOKEN':
      return 'This does not belong here; look for a bracket, comma or quotation mark too many or too few.';
    case 'MULTIPLE_DOCS':
      return 'A line of three hyphens ends the file here. Take it out.';
    case 'RESOURCE_EXHAUSTION':
      return 'Lists in lists go too deep here.';
    default:
      return `This is not well-formed YAML: ${error.message.replace(/\.?$/, '.')}`;
  }
}
