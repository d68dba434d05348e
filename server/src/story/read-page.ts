import { endOfLine } from '../text/lines.ts';
import type { Problem } from '../text/problem.ts';
import { type ChildText, childText } from './child-text.ts';
import { setBreak } from './line-ends.ts';
import type {
  MarkdownCodeBlock,
  MarkdownHtml,
  MarkdownNode,
  MarkdownPicture,
} from './markdown/markdown-node.ts';
import { readMarkdown } from './markdown/read-markdown.ts';
import { mostRead } from './page-breaks.ts';
import { readableSource } from './readable-source.ts';
import { withRomanNumerals } from './roman-numerals.ts';
import { sentencesOf } from './sentences.ts';
import type { Heading, Illustration, Mark, Page, Sentence, TeacherNote, Word } from './story.ts';
import { type Token, tokensOf } from './tokens.ts';

/** What a page is read with beside its source. */
export interface PageSurroundings {
  /** True when no page before it has a heading: its first heading is then the story's title. */
  readonly mayHoldTitle: boolean;
  /** The link definitions of the whole story. */
  readonly definitions: string;
}

/**
 * Reads one page. The result depends on nothing but the source and, for a page with a heading, `mayHoldTitle`, and for
 * a page with an opening square bracket, `definitions`.
 */
export function readPage(source: string, surroundings: PageSurroundings): Page {
  const readable = readableSource(source);
  const shared =
    source.includes('[') && surroundings.definitions !== '' ? `\n\n${surroundings.definitions}` : '';
  const blocks = readMarkdown(readable.source + shared);
  const addresses = addressesOf(blocks);
  const sentences: Sentence[] = [];
  const marks: Mark[] = [];
  const illustrations: Illustration[] = [];
  const notes: TeacherNote[] = [];
  const problems: Problem[] = [...readable.problems];
  let title: Heading | undefined;
  let headings = 0;
  // What stands behind the page's own source are definitions that turned out to be none.
  const waiting: MarkdownNode[] = blocks.filter(({ span }) => span.start < source.length).reverse();
  for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
    if (node.kind === 'paragraph' || node.kind === 'heading') {
      const text = childText(node);
      const tokens = withRomanNumerals(tokensOf(text.visible), { isHeading: node.kind === 'heading' });
      const read = sentencesOf(tokens, text.visible).map((sentence) => placed(sentence, text));
      for (const mark of marksOf(tokens, text)) marks.push(mark);
      problems.push(...unfinishedPictures(text));
      for (const picture of text.pictures) illustrations.push(illustration(picture, addresses));
      if (node.kind === 'heading' && read.length > 0) headings++;
      if (
        node.kind === 'heading' &&
        surroundings.mayHoldTitle &&
        headings === 1 &&
        title === undefined &&
        read.length > 0
      ) {
        title = headingOf(node, read);
      } else {
        for (const sentence of read) sentences.push(sentence);
      }
    } else if (node.kind === 'quote') {
      notes.push({ text: noteText(node), span: node.span });
    } else if (node.kind === 'code block') {
      problems.push(...indentedText(node, readable.source));
    } else if (node.kind === 'html') {
      problems.push(...markedUpText(node));
    } else if (node.kind === 'list' || node.kind === 'list item') {
      for (let index = node.children.length - 1; index >= 0; index--) {
        const child = node.children[index];
        if (child !== undefined) waiting.push(child);
      }
    }
  }
  return {
    source,
    sentences,
    marks,
    illustrations,
    notes,
    ...(title === undefined ? {} : { heading: title }),
    headings,
    problems,
  };
}

/** The note of a picture without brackets for its file: it would be read, and printed, as the child's text. */
function unfinishedPictures(text: ChildText): readonly Problem[] {
  if (!text.visible.includes('![')) return [];
  return [...text.visible.matchAll(/!\[[^[\]\n]{0,500}\]/g)].map(({ 0: note, index }) => ({
    message: `A picture needs round brackets behind its note, with its file or empty for a frame: ${note.slice(0, 60)}(). Without them this is read as the child’s text.`,
    span: text.sourceOf({ start: index, end: index + note.length }),
    severity: 'warning',
  }));
}

/** Words in lines that are indented so far that markdown takes them for code: the child would miss them. */
function indentedText(code: MarkdownCodeBlock, source: string): readonly Problem[] {
  const { start } = code.span;
  const indent = /^[ \t]+/.exec(source.slice(start))?.[0];
  if (indent === undefined || !tokensOf(code.text).some(({ kind }) => kind === 'word')) return [];
  const first = start + indent.length;
  const opening = indent.includes('\t') ? 'a tab' : 'four spaces or more';
  return [
    {
      message: `This line begins with ${opening}, so markdown takes it for code and it is not read as the child’s text. Take the white space at its head away.`,
      span: { start: first, end: endOfLine(source, first) },
      severity: 'warning',
    },
  ];
}

/** Words in a block of HTML, which is not the child's text; comments are meant to be left out. */
function markedUpText(block: MarkdownHtml): readonly Problem[] {
  const { start, end } = block.span;
  const words = block.html.replace(/<!--(?:[^-]|-(?!->))*(?:-->|$)/g, ' ').replace(/<[^<>]*>/g, ' ');
  if (/^<(?:script|style|pre)\b/i.test(block.html) || !/\p{L}/u.test(words)) return [];
  return [
    {
      message:
        'This is HTML, which is not read as the child’s text. Take the marks in angle brackets away, or write a comment: <!-- … -->.',
      span: { start, end: Math.min(endOfLine(block.html, 0) + start, end) },
      severity: 'warning',
    },
  ];
}

/** A page that is not read, because the story is too long. */
export function unreadPage(source: string): Page {
  return {
    source,
    sentences: [],
    marks: [],
    illustrations: [],
    notes: [],
    headings: 0,
    problems: [{ message: tooLong, span: { start: 0, end: Math.min(1, source.length) }, severity: 'error' }],
  };
}

/** True for a page that `unreadPage` made: the rest of a story that is too long. */
export function isUnread(page: Page): boolean {
  return page.problems[0]?.message === tooLong;
}

const tooLong =
  'The text is too long: from here on it is not read. Make several files of it, ' +
  `each of at most ${mostRead.lines} lines and ${mostRead.units} characters.`;

function headingOf(node: MarkdownNode, sentences: readonly Sentence[]): Heading {
  return {
    text: sentences.map((sentence) => sentence.text).join(' '),
    words: sentences.flatMap((sentence) => sentence.words),
    span: node.span,
  };
}

function placed(tokens: readonly Token[], text: ChildText): Sentence {
  const words: Word[] = [];
  let opens = true;
  for (const token of tokens) {
    if (token.kind === 'word') {
      words.push({ text: token.text, span: text.sourceOf(token), form: token.form, opensSentence: opens });
      opens = false;
    } else if (
      token.kind === 'mark' &&
      token.side === 'opens' &&
      (token.mark === '"' || token.mark === "'")
    ) {
      // Speech inside a sentence opens with a capital of its own.
      opens = true;
    }
  }
  const start = tokens[0]?.start ?? 0;
  const end = tokens.at(-1)?.end ?? start;
  const visible = text.visible.slice(start, end);
  const lines = visible.includes(setBreak)
    ? visible.split(setBreak).map((line) => line.replace(/\s+/g, ' ').trim())
    : [];
  return {
    span: text.sourceOf({ start, end }),
    text: visible.replace(/\s+/g, ' '),
    ...(lines.length > 1 ? { lines } : {}),
    words,
  };
}

function marksOf(tokens: readonly Token[], text: ChildText): readonly Mark[] {
  return tokens.flatMap((token) =>
    token.kind === 'mark' ? [{ mark: token.mark, span: text.sourceOf(token) }] : [],
  );
}

/** The paragraphs of a quote, one a line. */
function noteText(quote: MarkdownNode): string {
  const lines: string[] = [];
  const waiting: MarkdownNode[] = [quote];
  for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
    if (node.kind === 'paragraph' || node.kind === 'heading') {
      lines.push(childText(node).visible.replace(/\s+/g, ' ').trim());
    } else if ('children' in node) {
      for (let index = node.children.length - 1; index >= 0; index--) {
        const child = node.children[index];
        if (child !== undefined) waiting.push(child);
      }
    }
  }
  return lines.filter((line) => line !== '').join('\n');
}

function illustration(picture: MarkdownPicture, addresses: ReadonlyMap<string, string>): Illustration {
  const { note, from, span } = picture;
  return { note, address: 'address' in from ? from.address : (addresses.get(from.name) ?? ''), span };
}

/** The addresses of the definitions at the page's top level, the first of each name. */
function addressesOf(blocks: readonly MarkdownNode[]): ReadonlyMap<string, string> {
  const addresses = new Map<string, string>();
  for (const node of blocks) {
    if (node.kind === 'definition' && !addresses.has(node.name)) addresses.set(node.name, node.address);
  }
  return addresses;
}
