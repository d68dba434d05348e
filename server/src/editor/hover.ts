import type { Phonics } from '../phonics/phonics.ts';
import type { Span } from '../text/span.ts';
import type { WordFinders } from '../words/word-finders.ts';
import { type Analysis, storyOf } from './analysis.ts';
import { lessonBlocks, openedBlocks, spellingBlocks, wholeWordBlocks } from './hover-lesson.ts';
import { wordBlocks } from './hover-word.ts';
import type { Settings } from './protocol.ts';
import type { Block } from './rich-text.ts';
import type { SequenceFile } from './sequence-files.ts';
import { wordAt } from './word-at.ts';

/** A hover before it is rendered. */
export interface HoverText {
  readonly blocks: readonly Block[];
  /** What it speaks of, in offsets of the document. */
  readonly span: Span;
}

/** What hovers draw on beside the analysis. */
export interface HoverKnowledge {
  readonly phonics: Phonics;
  readonly finders: WordFinders;
}

/** What to say about a place in a story or a sequence; nothing where there is nothing to say. */
export function hoverAt(
  { content }: Analysis,
  offset: number,
  knowledge: HoverKnowledge,
  notation: Settings['sounds'],
): HoverText | undefined {
  const { phonics } = knowledge;
  if (content.kind === 'sequence') {
    return content.sequenceFile && sequenceHover(content.sequenceFile, offset, knowledge, notation);
  }
  const lesson = storyOf(content)?.frontMatter.lesson;
  if (lesson !== undefined && isIn(lesson.span, offset)) {
    const taught = content.sequenceFile?.teaching.taughtAt(lesson.value);
    return taught && { blocks: lessonBlocks(taught), span: lesson.span };
  }
  const word = content.kind === 'reviewed' ? wordAt(content.review, offset) : undefined;
  if (word === undefined || content.kind !== 'reviewed') return undefined;
  const { review, sequenceFile } = content;
  const blocks = wordBlocks(word, { review, teaching: sequenceFile.teaching, phonics, notation });
  return { blocks, span: word.span };
}

function sequenceHover(
  { teaching }: SequenceFile,
  offset: number,
  { phonics, finders }: HoverKnowledge,
  notation: Settings['sounds'],
): HoverText | undefined {
  const lesson = teaching.sequence.lessons.find(({ span }) => isIn(span, offset));
  if (lesson === undefined) return undefined;
  const spelling = lesson.spellings.find(({ span }) => isIn(span, offset));
  if (spelling !== undefined) {
    const resolved = teaching.spellings.find((candidate) => candidate.line === spelling.value);
    return {
      blocks: spellingBlocks(spelling.value, resolved, phonics, notation),
      span: spelling.span,
    };
  }
  const word = lesson.highFrequencyWords.find(({ span }) => isIn(span, offset));
  if (word !== undefined) return { blocks: wholeWordBlocks(word.value, phonics, notation), span: word.span };
  const taught = isIn(lesson.nameSpan, offset) ? teaching.taughtBy(lesson) : undefined;
  return (
    taught && {
      blocks: [...lessonBlocks(taught), ...openedBlocks(taught, finders(teaching))],
      span: lesson.nameSpan,
    }
  );
}

function isIn({ start, end }: Span, offset: number): boolean {
  return start <= offset && offset <= end;
}
