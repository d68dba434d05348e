import type { Counts, ReviewedWord } from '../review/review.ts';
import type { Lesson } from '../sequence/sequence.ts';
import type { Missing } from '../sequence/taught.ts';

/** How a text stands at one lesson, as `check --lesson` would say. */
export interface LessonFit {
  readonly lesson: Lesson;
  readonly counts: Counts;
  /** The readable share, 0 to 1. */
  readonly readable: number;
  /** The lesson's readable target as a share. */
  readonly target: number;
  readonly reachesTarget: boolean;
}

/** A text against a whole sequence. */
export interface Fit {
  /** Running words; the title's do not count. */
  readonly words: number;
  /** How many of them are different, capitals apart. */
  readonly differentWords: number;
  /** Every lesson, in order. */
  readonly lessons: readonly LessonFit[];
  /** The first lesson at which the text reaches the target; none when it never does. */
  readonly first?: LessonFit;
  /** The first lesson from which on it reaches every target; later than `first` where a later target is higher. */
  readonly lasting?: LessonFit;
  /** What keeps the text from being readable at a lesson of the sequence. */
  heldBackAt(lesson: Lesson): HeldBack;
}

/** What the children lack for a text at a lesson. */
export interface HeldBack {
  readonly fit: LessonFit;
  /** Spellings and forms, that which would raise the share most first. */
  readonly things: readonly MissingThing[];
  /** The words themselves, the most frequent first. */
  readonly words: readonly UnreadWord[];
  /** Those of them that the writer declared, names and story words: they count in the whole only. */
  readonly declared: readonly UnreadWord[];
  /** Those that are not declared, and that no lesson makes readable. */
  readonly never: readonly UnreadWord[];
}

/** A spelling or form that words of the text need. */
export interface MissingThing {
  readonly missing: Missing;
  /** By how much the readable share would rise if it alone were taught, 0 to 1. */
  readonly rise: number;
  /** Running words that lack nothing else. */
  readonly alone: number;
  /** The different words that need it, the most frequent first. */
  readonly words: readonly UnreadWord[];
}

/** A word that the children cannot read. */
export interface UnreadWord {
  /** As it stands first in the text. */
  readonly text: string;
  readonly count: number;
  /** By how much the readable share would rise if the word were readable, 0 to 1. */
  readonly rise: number;
  readonly reviewed: ReviewedWord;
  /** The lesson at which it becomes readable; none when it never does, as names do. */
  readonly lesson?: Lesson;
}
