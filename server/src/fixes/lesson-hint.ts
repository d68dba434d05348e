import { findFrontMatter, frontMatterKeys } from '../story/front-matter-block.ts';
import { readStory } from '../story/read-story.ts';
import type { Story } from '../story/story.ts';
import { endOfLine, startOfNextLine } from '../text/lines.ts';
import { changesBetween } from '../text/nearest-name.ts';
import type { Span } from '../text/span.ts';
import { lineEndOf, type TextEdit } from './text-edit.ts';

/** A sign that a file is meant to be a story though it is none, and what would make it one. */
export interface LessonHint {
  /** What is the matter, as a sentence or two for the writer. */
  readonly message: string;
  readonly span: Span;
  /** What the edits do, for a menu. */
  readonly title: string;
  readonly edits: readonly TextEdit[];
}

/** Front matter that stands further down, in UTF-16 code units, is not looked for. */
const mostSearched = 5_000;

/**
 * Looks for a lesson that is nearly named in a file that is no story: a key such as `Lesson:`, front matter that is not
 * the first thing in the file, or has no line of three hyphens before it. Nothing for a file without any such sign.
 */
export function lessonHint({ isStory, text }: Story): LessonHint | undefined {
  if (isStory || !/less|leson/i.test(text.slice(0, mostSearched))) return undefined;
  return misspeltKey(text) ?? frontMatterBelow(text) ?? withoutFence(text);
}

function misspeltKey(text: string): LessonHint | undefined {
  const block = findFrontMatter(text);
  if (block === undefined) return undefined;
  const content = text.slice(block.content.start, block.content.end);
  for (const match of content.matchAll(/^(["']?)([A-Za-z]{5,8})\1(?=[ \t]*:)/gm)) {
    const key = match[2] ?? '';
    if (changesBetween(key.toLowerCase(), 'lesson') > 1) continue;
    const start = block.content.start + match.index;
    const span = { start, end: start + match[0].length };
    return {
      message: `This file is not checked: a story names its lesson with “lesson:”, in small letters, not “${key}:”.`,
      span,
      title: 'Write “lesson”',
      edits: [{ span, text: 'lesson' }],
    };
  }
  return undefined;
}

function frontMatterBelow(text: string): LessonHint | undefined {
  const start = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  const fence = /^[ \t]*---[ \t]*$/m.exec(text.slice(start, mostSearched));
  if (fence === null || (fence.index === 0 && fence[0].startsWith('-'))) return undefined;
  const indent = fence[0].indexOf('-');
  const from = start + fence.index;
  const rest = text.slice(from + indent);
  const block = findFrontMatter(rest);
  if (block?.closed !== true || !readStory(rest.slice(0, block.span.end)).isStory) return undefined;
  const span = { start: from + indent, end: from + indent + 3 };
  const before = text.slice(start, from);
  if (before.trim() === '') {
    return {
      message:
        'This file is not checked: the front matter must begin in the first line. Take away what is empty before these hyphens.',
      span,
      title: 'Begin with the front matter',
      edits: [{ span: { start, end: from + indent }, text: '' }],
    };
  }
  const end = startOfNextLine(text, from + indent + block.span.end);
  const lineEnd = lineEndOf(text);
  const moved = rest.slice(0, block.span.end);
  return {
    message:
      'This file is not checked: the front matter, with the lesson, must be the first thing in the file.',
    span,
    title: 'Move the front matter to the top',
    edits: [
      { span: { start, end: start }, text: `${moved}${lineEnd}` },
      { span: { start: from, end }, text: '' },
    ],
  };
}

const ownLine = new RegExp(`^(?:${frontMatterKeys.join('|')})[ \\t]*:`, 'i');
/** What editors of texts make of hyphens, or what is one too few or too many of them. */
const likeFence = /^[ \t]*[-\u2010-\u2015\u2212_*=]{1,10}[ \t]*$/;

function withoutFence(text: string): LessonHint | undefined {
  const lineEnd = lineEndOf(text);
  const start = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  let at = start;
  let first: Span | undefined;
  let lesson: Span | undefined;
  for (; at < text.length && at < mostSearched; at = startOfNextLine(text, endOfLine(text, at))) {
    const end = endOfLine(text, at);
    const line = text.slice(at, end);
    if (first === undefined && (line.trim() === '' || likeFence.test(line))) continue;
    const isBelow = first !== undefined && /^(?:[ \t]+|- )\S/.test(line);
    if (!isBelow && !ownLine.test(line)) break;
    first ??= { start: at, end };
    if (/^lesson[ \t]*:/i.test(line)) lesson ??= { start: at, end: at + 'lesson'.length };
  }
  if (first === undefined || lesson === undefined) return undefined;
  const closing = text.slice(at, endOfLine(text, at));
  const close = likeFence.test(closing) ? { start: at, end: at + closing.length } : { start: at, end: at };
  const closes = close.end > close.start || at === text.length ? '---' : `---${lineEnd}`;
  const opensLine = at === text.length && !/[\r\n]$/.test(text) ? lineEnd : '';
  return {
    message:
      'This file is not checked: the lines with the lesson must stand between two lines of three hyphens, “---”, at the top of the file.',
    span: lesson,
    title: 'Set these lines between lines of hyphens',
    edits: [
      ...(lesson.start === first.start
        ? [{ span: { start, end: lesson.end }, text: `---${lineEnd}lesson` }]
        : [
            { span: { start, end: first.start }, text: `---${lineEnd}` },
            { span: lesson, text: 'lesson' },
          ]),
      { span: close, text: `${opensLine}${closes}` },
    ],
  };
}
