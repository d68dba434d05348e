import { resolve } from 'node:path';
import { lessonMeant } from '../sequence/nearest-lessons.ts';
import { mistakenNameHint, sequenceFileName } from '../sequence/sequence-file-name.ts';
import type { Taught } from '../sequence/taught.ts';
import type { Host } from './host.ts';
import type { SequenceFile, SequenceFinder } from './sequence-finder.ts';

/** What a call about a lesson, and no story, is to use. */
export interface LessonWishes {
  readonly lesson: string;
  /** The sequence file, as given. */
  readonly sequence: string | undefined;
}

/** The sequence that a call without a story means: the one it names, else the nearest from the working folder upwards. */
export function sequenceOfCall(
  sequence: string | undefined,
  sequences: SequenceFinder,
  { workingFolder }: Pick<Host, 'workingFolder'>,
): SequenceFile | { readonly message: string } {
  if (sequence !== undefined) {
    const file = sequences.at(resolve(workingFolder, sequence));
    return 'trouble' in file ? { message: `The sequence “${sequence}” ${file.trouble}.` } : file;
  }
  const nearest = sequences.nearest(workingFolder);
  if (nearest === undefined) {
    const mistaken = sequences.mistakenName(workingFolder);
    const hint = mistaken === undefined ? '' : ` ${mistakenNameHint(mistaken)}.`;
    return {
      message: `There is no ${sequenceFileName} in this folder or above it.${hint} Name one with --sequence FILE.`,
    };
  }
  return 'trouble' in nearest ? { message: `The nearest ${sequenceFileName} ${nearest.trouble}.` } : nearest;
}

/** The lesson of a call with its sequence, or why there is none. */
export function lessonOfCall(
  { lesson, sequence }: LessonWishes,
  sequences: SequenceFinder,
  host: Host,
): { readonly file: SequenceFile; readonly taught: Taught } | { readonly message: string } {
  const file = sequenceOfCall(sequence, sequences, host);
  if ('message' in file) return file;
  const taught = file.teaching.taughtAt(lesson);
  return taught === undefined ? { message: noSuchLessonMessage(lesson, file) } : { file, taught };
}

/** Says that a sequence has no lesson of a name, with the name that is meant or the range of its lessons. */
export function noSuchLessonMessage(lesson: string, { path, teaching }: SequenceFile): string {
  const names = teaching.sequence.lessons.map(({ name }) => name);
  const near = lessonMeant(lesson, names);
  const first = names[0];
  const range =
    first === undefined
      ? ' It has no lessons at all.'
      : names.length === 1
        ? ` Its only lesson is “${first}”.`
        : ` Its lessons are “${first}” to “${names.at(-1)}”.`;
  const hint = near === undefined ? range : ` Did you mean “${near}”?`;
  return `${path} has no lesson “${lesson}”.${hint}`;
}
