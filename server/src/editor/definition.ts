import type { LocationLink } from 'vscode-languageserver';
import type { Lesson } from '../sequence/sequence.ts';
import { foldedWord } from '../text/folded-word.ts';
import type { Span } from '../text/span.ts';
import { type Analysis, storyOf } from './analysis.ts';
import { rangeOf } from './diagnostics.ts';
import type { SequenceFile } from './sequence-files.ts';
import { type WordAt, wordAt } from './word-at.ts';

/**
 * Where to go from a place in a story: from the lesson's name to the lesson in the sequence, from `sequence:` to that
 * file, from a word the children cannot read to the lessons that teach what it lacks.
 */
export function definitionsAt({ snapshot, content }: Analysis, offset: number): LocationLink[] {
  if (content.kind === 'sequence' || content.sequenceFile === undefined) return [];
  const { sequenceFile } = content;
  const frontMatter = storyOf(content)?.frontMatter;
  const link = (origin: Span, target: Span, selection: Span): LocationLink => ({
    originSelectionRange: rangeOf(snapshot, origin),
    targetUri: sequenceFile.snapshot.uri,
    targetRange: rangeOf(sequenceFile.snapshot, target),
    targetSelectionRange: rangeOf(sequenceFile.snapshot, selection),
  });
  const { lesson, sequence } = frontMatter ?? {};
  if (lesson !== undefined && isIn(lesson.span, offset)) {
    const target = sequenceFile.teaching.taughtAt(lesson.value)?.lesson;
    return target === undefined ? [] : [link(lesson.span, target.span, target.nameSpan)];
  }
  if (sequence !== undefined && isIn(sequence.span, offset)) {
    const top = { start: 0, end: 0 };
    return [link(sequence.span, top, top)];
  }
  const word = content.kind === 'reviewed' ? wordAt(content.review, offset) : undefined;
  if (word === undefined) return [];
  return lessonsFor(word, sequenceFile).map(({ span, nameSpan }) => link(word.span, span, nameSpan));
}

/** The lessons that teach what a word lacks, each once; the one that teaches it as a whole among them. */
function lessonsFor({ reviewed }: WordAt, { teaching }: SequenceFile): readonly Lesson[] {
  if (reviewed.kind !== 'not-taught') return [];
  const folded = foldedWord(reviewed.word.text);
  const whole = teaching.sequence.lessons.find(({ highFrequencyWords }) =>
    highFrequencyWords.some(({ value }) => foldedWord(value) === folded),
  );
  const lessons = reviewed.missing.map(({ lesson }) => lesson);
  return [...new Set([...lessons, whole])].filter((lesson) => lesson !== undefined);
}

function isIn({ start, end }: Span, offset: number): boolean {
  return start <= offset && offset <= end;
}
