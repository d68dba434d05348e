import type { Ending } from '../phonics/reading.ts';
import type { Accent } from '../phonics/sound-classes.ts';
import type { Problem } from '../text/problem.ts';
import type { Span } from '../text/span.ts';

/** What a story must reach; every figure is set by the sequence and may be changed by a lesson. */
export interface Targets {
  /** Percent of running words that must be readable, 0 to 100. */
  readonly readable: number;
  /** Words in a sentence, at most. */
  readonly sentence: number;
  /** Words on a page, at most. */
  readonly page: number;
  /** Running words that use a new spelling, at least. */
  readonly practice: number;
  /** Times each new high-frequency word appears, at least. */
  readonly repeats: number;
  /** Different story words, at most. */
  readonly storyWords: number;
}

/** What a series of stories is held to, in stories and uses. */
export interface SeriesLimits {
  /** A spelling comes again within so many stories after those of its own lesson. */
  readonly againWithin: number;
  /** A high-frequency word that so many stories in a row do not have is missed. */
  readonly unseenFor: number;
  /** Uses of any word in the whole series, at least. */
  readonly metAtLeast: number;
}

/** A scalar of the file with its place. */
export interface Placed<T> {
  readonly value: T;
  /** Offsets in the sequence file. */
  readonly span: Span;
}

/** `igh as in light`, as the writer wrote it. */
export interface SpellingLine {
  readonly letters: string;
  readonly keyWord: string;
}

/** Where in a syllable consonants may stand together: at its start, at its end, or three in a row. */
export const blends = ['start', 'end', 'three'] as const;
/** One of the three kinds of consonant blend. */
export type Blend = (typeof blends)[number];

/** One lesson as the file gives it; what is missing in the file is empty here. */
export interface Lesson {
  readonly name: string;
  /** Place in the sequence, from 0. */
  readonly index: number;
  readonly title?: string;
  readonly spellings: readonly Placed<SpellingLine>[];
  readonly highFrequencyWords: readonly Placed<string>[];
  readonly endings: readonly Placed<Ending>[];
  readonly blends: readonly Placed<Blend>[];
  /** The longest word in syllables, where the lesson sets it. */
  readonly syllables?: Placed<number>;
  readonly punctuation: readonly Placed<string>[];
  readonly targets: Partial<Targets>;
  /** The lesson's name in the file. */
  readonly nameSpan: Span;
  /** The whole lesson in the file. */
  readonly span: Span;
}

/** Dimensions that are checked only in a sequence that mentions them. */
export type Dimension = 'endings' | 'blends' | 'syllables' | 'punctuation';

/** An author's own reading of a word: `{word: "tsar", parts: "ts as in cats …"}` is resolved later. */
export interface AuthorPronunciation {
  readonly word: Placed<string>;
  readonly graphemes: Placed<string>;
}

/** A scope and sequence, as read from its file. Immutable; a new text gives a new one. */
export interface Sequence {
  readonly title: string;
  readonly targets: Targets;
  readonly lessons: readonly Lesson[];
  /** Whether the children say *cot* and *caught* with one vowel (the default) or with two; key `cot and caught`. */
  readonly accent: Accent;
  readonly mentions: ReadonlySet<Dimension>;
  /** When something counts as missing from the year; key `series`. */
  readonly limits: SeriesLimits;
  readonly pronunciations: readonly AuthorPronunciation[];
  /** What is wrong in the file, key words not yet checked against their sounds. */
  readonly problems: readonly Problem[];
}
