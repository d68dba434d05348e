import { dirname, resolve } from 'node:path';
import { lessonHint } from '../fixes/lesson-hint.ts';
import { frontMatterFindings } from '../review/findings.ts';
import type { Review } from '../review/review.ts';
import { reviewStory } from '../review/review-story.ts';
import { mistakenNameHint, sequenceFileName } from '../sequence/sequence-file-name.ts';
import { readStory } from '../story/read-story.ts';
import type { Story } from '../story/story.ts';
import { lineIndex } from '../text/line-index.ts';
import type { Span } from '../text/span.ts';
import type { Complaint } from './complaint.ts';
import { fileTrouble } from './file-trouble.ts';
import { type FoundText, withForwardSlashes } from './find-texts.ts';
import type { Host } from './host.ts';
import { noSuchLessonMessage } from './lesson-call.ts';
import type { SequenceFile, SequenceFinder } from './sequence-finder.ts';

/** A story with its review. */
export interface CheckedStory {
  /** As it is shown. */
  readonly path: string;
  readonly review: Review;
  /** The sequence it was read by. */
  readonly sequence: SequenceFile;
}

/** What checking a file comes to. */
export type CheckOutcome =
  | { readonly kind: 'checked'; readonly checked: CheckedStory }
  | { readonly kind: 'unusable'; readonly complaints: readonly Complaint[] }
  /** Not a story, and not named by the call either. */
  | { readonly kind: 'passed-by' };

/** What the call says of all files. */
export interface CheckWishes {
  /** The lesson to check at, whatever the front matter says. */
  readonly lesson: string | undefined;
  /** The sequence file, as given. */
  readonly sequence: string | undefined;
}

/** Reads and reviews one file. */
export function checkStory(
  found: FoundText,
  wishes: CheckWishes,
  sequences: SequenceFinder,
  host: Host,
): CheckOutcome {
  const read = host.readFile(found.absolute);
  if (read.kind !== 'text') {
    return {
      kind: 'unusable',
      complaints: [{ path: found.path, message: `The file ${fileTrouble(read)}.` }],
    };
  }
  const story = readStory(read.text);
  const lesson = wishes.lesson ?? (story.isStory ? story.frontMatter.lesson?.value : undefined);
  if (lesson === undefined) return withoutLesson(found, story);

  const sequenceFile = sequenceFor(found, story, wishes, sequences, host);
  if ('message' in sequenceFile) return unusable(found, story, sequenceFile);
  const taught = sequenceFile.teaching.taughtAt(lesson);
  if (taught === undefined) return unusable(found, story, noSuchLesson(lesson, story, wishes, sequenceFile));
  const review = reviewStory({ story, taught, phonics: host.phonics() });
  return { kind: 'checked', checked: { path: found.path, review, sequence: sequenceFile } };
}

/** Why the sequence that a call names for all stories cannot be had, to be said once; nothing when it can, or none is named. */
export function sequenceComplaint(
  sequence: string | undefined,
  sequences: SequenceFinder,
  { workingFolder }: Host,
): Complaint | undefined {
  const file = sequence === undefined ? undefined : sequences.at(resolve(workingFolder, sequence));
  if (sequence === undefined || file === undefined || !('trouble' in file)) return undefined;
  return { path: withForwardSlashes(sequence), message: `The sequence ${file.trouble}.` };
}

/** The sequence of a story: the call's, else the one it names, else the nearest; or why it cannot be had. */
export function sequenceFor(
  found: FoundText,
  { frontMatter }: Story,
  { sequence }: CheckWishes,
  sequences: SequenceFinder,
  host: Host,
): SequenceFile | Misfit {
  const folder = dirname(found.absolute);
  if (sequence !== undefined) {
    const file = sequences.at(resolve(host.workingFolder, sequence));
    return 'trouble' in file ? { message: `The sequence “${sequence}” ${file.trouble}.` } : file;
  }
  const named = frontMatter.sequence;
  if (named !== undefined) {
    const file = sequences.named(named.value, folder, found.root);
    return 'trouble' in file
      ? { message: `The sequence “${named.value}” ${file.trouble}.`, span: named.span }
      : file;
  }
  const nearest = sequences.nearest(folder);
  const span = frontMatter.lesson?.span;
  const place = span === undefined ? {} : { span };
  if (nearest === undefined) {
    const mistaken = sequences.mistakenName(folder);
    const hint = mistaken === undefined ? 'Create one' : mistakenNameHint(mistaken);
    const message = `There is no ${sequenceFileName} in the story’s folder or above it. ${hint}, or name one with --sequence FILE or with sequence: in the front matter.`;
    return { message, ...place };
  }
  return 'trouble' in nearest
    ? { message: `The nearest ${sequenceFileName} ${nearest.trouble}.`, ...place }
    : nearest;
}

function noSuchLesson(
  lesson: string,
  { frontMatter }: Story,
  wishes: CheckWishes,
  sequenceFile: SequenceFile,
): Misfit {
  const message = noSuchLessonMessage(lesson, sequenceFile);
  const span = wishes.lesson === undefined ? frontMatter.lesson?.span : undefined;
  return span === undefined ? { message } : { message, span };
}

/** A file without a lesson: passed by in a folder, unless a half-written or nearly named lesson shows that a story is meant. */
function withoutLesson(found: FoundText, story: Story): CheckOutcome {
  if (story.isStory) return unusable(found, story, undefined);
  const hint = lessonHint(story);
  if (hint !== undefined) {
    const at = lineIndex(story.text)(hint.span.start);
    const complaint: Complaint = {
      path: found.path,
      at,
      message: hint.message,
      rule: 'front-matter-problem',
    };
    return { kind: 'unusable', complaints: [complaint] };
  }
  if (!found.isNamed) return { kind: 'passed-by' };
  const lacks =
    story.frontMatter.span.end === 0
      ? 'it begins with no front matter that names a lesson'
      : 'its front matter has no lesson';
  const message = `This is not a story: ${lacks}. Add one, or use --lesson NAME.`;
  return unusable(found, story, { message });
}

/** Why a story cannot be reviewed, at its place when it has one. */
export interface Misfit {
  readonly message: string;
  readonly span?: Span;
}

/** The problems of the front matter, which may be the cause, and then the misfit itself. */
export function unusable(
  { path }: FoundText,
  { text, frontMatter }: Story,
  misfit: Misfit | undefined,
): CheckOutcome & { readonly kind: 'unusable' } {
  const place = lineIndex(text);
  const placed =
    misfit?.span === undefined ? [] : [{ ...misfit, span: misfit.span, severity: 'error' as const }];
  const complaints: Complaint[] = frontMatterFindings([...frontMatter.problems, ...placed]).map(
    ({ span, message, rule }) => ({ path, at: place(span.start), message, rule }),
  );
  if (misfit !== undefined && misfit.span === undefined) complaints.push({ path, message: misfit.message });
  return { kind: 'unusable', complaints };
}
