import { lessonHint } from '../fixes/lesson-hint.ts';
import type { Phonics } from '../phonics/phonics.ts';
import { frontMatterFindings, inOrder, sequenceFindings } from '../review/findings.ts';
import type { Finding } from '../review/review.ts';
import { reviewStory } from '../review/review-story.ts';
import type { WordMemory } from '../review/word-memory.ts';
import { readStory } from '../story/read-story.ts';
import type { Story } from '../story/story.ts';
import type { Problem } from '../text/problem.ts';
import { type Content, type NoReview, type Outcome, storyOf } from './analysis.ts';
import {
  lessonProblem,
  noSequenceProblem,
  type PlacedMessage,
  sequencePathProblem,
  sizeProblem,
} from './document-problems.ts';
import type { Snapshot } from './documents.ts';
import type { SequenceFile } from './sequence-files.ts';
import { isYamlName, resolvedIn } from './uri.ts';
import type { Home } from './workspace.ts';

/** A story that is waiting for its sequence. */
export interface Draft {
  readonly story: Story;
  /** The sequence file its front matter names, canonical; else the nearest one is meant. */
  readonly named?: string;
}

/** True for a document that can only be a sequence; all others can only be stories. */
export function isYaml({ uri, document }: Snapshot): boolean {
  return document.languageId === 'yaml' || isYamlName(uri);
}

/** What a sequence file's own text comes to. `read` and `furtherProblems` are asked unless the file is too large. */
export function sequenceOutcome(
  snapshot: Snapshot,
  largestFile: number,
  read: (snapshot: Snapshot) => SequenceFile,
  furtherProblems: (file: SequenceFile) => readonly Problem[],
): Outcome {
  const tooLarge = sizeProblem(snapshot.document.getText(), largestFile);
  if (tooLarge !== undefined) {
    return {
      content: {
        kind: 'sequence',
        findings: [{ ...tooLarge, rule: 'sequence-problem', severity: 'error' }],
      },
    };
  }
  const sequenceFile = read(snapshot);
  return {
    content: {
      kind: 'sequence',
      sequenceFile,
      findings: sequenceFindings([...sequenceFile.teaching.problems, ...furtherProblems(sequenceFile)]),
    },
  };
}

/**
 * Reads a document up to where its sequence is needed: a draft, or the outcome where none is. What did not change since
 * `before` is taken over from there.
 */
export function draftOf(
  snapshot: Snapshot,
  largestFile: number,
  home: Home | undefined,
  before: Content | undefined,
): Draft | Outcome {
  const text = snapshot.document.getText();
  const tooLarge = sizeProblem(text, largestFile);
  if (tooLarge !== undefined) {
    const { isStory } = readStory(text.slice(0, longestFrontMatter));
    return isStory
      ? withoutReview('too-large', tooLarge, undefined, 'front-matter-problem')
      : notAStory(undefined);
  }
  const previous = before === undefined ? undefined : storyOf(before);
  const story = previous?.text === text ? previous : readStory(text, previous);
  if (!story.isStory) return notAStory(story);
  const { sequence } = story.frontMatter;
  if (sequence === undefined || home === undefined) return { story };
  const named = /\.ya?ml$/i.test(sequence.value)
    ? resolvedIn(home.folder, sequence.value, home.root)
    : 'unusable';
  if (named === 'absolute' || named === 'unusable' || named === 'outside') {
    return withoutReview('no-sequence', sequencePathProblem(sequence, named), story, 'front-matter-problem');
  }
  return { story, named };
}

/** What a story's outcome rests on beside its text and its sequence. */
export interface StoryWorld {
  readonly phonics: Phonics;
  /** Spares work where the document is looked at again and again. */
  readonly memory?: WordMemory;
  /** What the document came to before. */
  readonly before?: Content | undefined;
  /** Where no sequence was found: a file whose name is nearly one. */
  readonly mistakenName?: string | undefined;
}

/** What a draft comes to with the sequence that was found for it. */
export function storyOutcome(
  { story, named }: Draft,
  sequenceFile: SequenceFile | undefined,
  { phonics, memory, before, mistakenName }: StoryWorld,
): Outcome {
  const naming = named === undefined ? {} : { named };
  const { lesson } = story.frontMatter;
  if (lesson === undefined) return { ...lessonUnread(story, sequenceFile), ...naming };
  if (sequenceFile === undefined) {
    const [rule, problem] = noSequenceProblem(story, mistakenName);
    return { ...withoutReview('no-sequence', problem, story, rule), ...naming };
  }
  const taught = sequenceFile.teaching.taughtAt(lesson.value);
  if (taught === undefined) {
    const problem = lessonProblem(lesson, sequenceFile);
    return {
      ...withoutReview('no-such-lesson', problem, story, 'front-matter-problem', sequenceFile),
      ...naming,
    };
  }
  const previous = before?.kind === 'reviewed' ? before.review : undefined;
  const review = reviewStory({ story, taught, phonics, ...(memory && { memory }) }, previous);
  return { content: { kind: 'reviewed', review, sequenceFile }, ...naming };
}

/** The front matter of a file that is too large is looked for in its first so many UTF-16 code units. */
const longestFrontMatter = 20_000;

function notAStory(story: Story | undefined): Outcome {
  const hint = story && lessonHint(story);
  const message = hint?.message ?? 'This file has no lesson in its front matter, so it is not checked.';
  return {
    content: {
      kind: 'not-reviewed',
      reason: 'not-a-story',
      message,
      ...(story === undefined ? {} : { story }),
      findings:
        hint === undefined
          ? []
          : [{ rule: 'front-matter-problem', severity: 'information', span: hint.span, message }],
    },
  };
}

/** A `lesson` without a usable name: the front matter's own problems say at their place what would do. */
function lessonUnread(story: Story, sequenceFile: SequenceFile | undefined): Outcome {
  return {
    content: {
      kind: 'not-reviewed',
      reason: 'no-such-lesson',
      message: 'The front matter does not name the lesson yet, so the story is not checked.',
      story,
      ...(sequenceFile === undefined ? {} : { sequenceFile }),
      findings: frontMatterFindings(story.frontMatter.problems),
    },
  };
}

function withoutReview(
  reason: NoReview,
  problem: PlacedMessage,
  story: Story | undefined,
  rule: Finding['rule'],
  sequenceFile?: SequenceFile,
): Outcome {
  return {
    content: {
      kind: 'not-reviewed',
      reason,
      message: problem.message,
      ...(story === undefined ? {} : { story }),
      ...(sequenceFile === undefined ? {} : { sequenceFile }),
      findings: inOrder([...frontMatterFindings(story?.frontMatter.problems ?? []), { ...problem, rule }]),
    },
  };
}
