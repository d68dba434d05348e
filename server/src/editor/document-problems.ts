import type { Finding } from '../review/review.ts';
import { listed } from '../review/wording.ts';
import { nearestLessons } from '../sequence/nearest-lessons.ts';
import { mistakenNameHint, sequenceFileName } from '../sequence/sequence-file-name.ts';
import type { FrontMatterValue, Story } from '../story/story.ts';
import type { SequenceFile } from './sequence-files.ts';
import { fileName, type PathFault } from './uri.ts';

/** A finding whose rule is decided elsewhere. */
export type PlacedMessage = Omit<Finding, 'rule'>;

/**
 * Why a text is not read at all: it is longer than the setting allows. Counted in characters (UTF-16 code units), 1024 to
 * the kilobyte.
 */
export function sizeProblem(text: string, largestFile: number): PlacedMessage | undefined {
  if (text.length <= largestFile * 1024) return undefined;
  const kilobytes = Math.ceil(text.length / 1024);
  return {
    severity: 'warning',
    span: { start: 0, end: lineEnd(text, 0) },
    message: `This file is not checked: it has ${kilobytes} kilobytes, and the setting “battledore.largestFile” allows ${largestFile}.`,
  };
}

/** What is wrong with the path of a `sequence:` that cannot be followed. */
export function sequencePathProblem(
  { value, span }: FrontMatterValue<string>,
  fault: PathFault,
): PlacedMessage {
  return { severity: 'error', span, message: pathFaults[fault](value) };
}

const pathFaults: Readonly<Record<PathFault, (path: string) => string>> = {
  absolute: (path) =>
    `“${path}” is not a relative path. Give the way from this story’s folder to the sequence file.`,
  outside: (path) => `“${path}” leads out of the workspace folder. The sequence file must lie inside it.`,
  unusable: (path) =>
    `“${path}” cannot be a sequence file. Give the way from this story’s folder to a file whose name ends in .yaml, with / between folders.`,
};

/** No sequence anywhere, or not at the place that the story names; with the rule it belongs to. */
export function noSequenceProblem(
  { frontMatter }: Story,
  mistakenName?: string,
): [rule: Finding['rule'], problem: PlacedMessage] {
  const { sequence, lesson } = frontMatter;
  if (sequence !== undefined) {
    const message = `There is no file “${sequence.value}”. Create it, or correct the way to it from this story’s folder.`;
    return ['front-matter-problem', { severity: 'error', span: sequence.span, message }];
  }
  return [
    'sequence-problem',
    {
      severity: 'information',
      span: lesson?.span ?? frontMatter.span,
      message: `No ${sequenceFileName} was found beside this story or in a folder above it, up to the workspace folder, so the story is not checked. ${mistakenName === undefined ? 'Create one' : mistakenNameHint(mistakenName)}, or name one with “sequence:” in the front matter.`,
    },
  ];
}

/** A lesson that the sequence does not have; names those that come nearest. */
export function lessonProblem(
  { value, span }: FrontMatterValue<string>,
  { snapshot, teaching }: SequenceFile,
): PlacedMessage {
  const file = fileName(snapshot.uri);
  const names = teaching.sequence.lessons.map(({ name }) => name);
  const errors = teaching.problems.filter(({ severity }) => severity === 'error').length;
  const broken =
    errors === 0
      ? ''
      : ` ${file} has ${errors === 1 ? 'an error' : `${errors} errors`} that may be the reason.`;
  if (names.length === 0) {
    return {
      severity: 'error',
      span,
      message: `${file} has no lessons yet, so the story is not checked.${broken}`,
    };
  }
  const near = listed(nearestLessons(value, names).map((name) => `“${name}”`));
  return {
    severity: 'error',
    span,
    message: `${file} has no lesson “${value}”, so the story is not checked. The nearest names are ${near}.${broken}`,
  };
}

function lineEnd(text: string, from: number): number {
  const end = text.slice(from, from + 1000).search(/[\r\n]/);
  return end === -1 ? Math.min(text.length, from + 1000) : from + end;
}
