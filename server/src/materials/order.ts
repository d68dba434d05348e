import type { Part } from '../phonics/reading.ts';
import type { Review } from '../review/review.ts';
import type { Span } from '../text/span.ts';
import type { FontBytes } from './layout/font-files.ts';
import type { Layout, Paper } from './layout/paper.ts';

/** What can be printed of a story. */
export const materials = ['book', 'teacher', 'practice', 'cards'] as const;
/** One of the things that can be printed of a story. */
export type Material = (typeof materials)[number];

/** The parts of the practice pages, in their order. */
export const practiceParts = ['hunt', 'boxes', 'chain', 'sentences'] as const;
/** A part of the practice pages. */
export type PracticePart = (typeof practiceParts)[number];

/**
 * A file that a story shows: its bytes, or why they cannot be had, to complete a sentence that begins with its name; or that
 * it is still to come, and an empty frame is to stand for it.
 */
export type PictureFile =
  | { readonly bytes: Uint8Array }
  | { readonly trouble: string }
  | { readonly isToCome: true };

/** A word of a word-building chain with its graphemes. */
export interface ChainWord {
  readonly word: string;
  readonly parts: readonly Part[];
}

/** A story with all that its materials need. */
export interface PrintedStory {
  readonly review: Review;
  /** By address, as the story writes it. */
  readonly pictures: ReadonlyMap<string, PictureFile>;
  /** A chain in which each word differs from the one before by one grapheme; empty when there is none. */
  readonly chain: readonly ChainWord[];
}

/** What is to be printed, and how. */
export interface PrintOrder {
  readonly material: Material;
  /** In the order of the document; several books make a collection. */
  readonly stories: readonly PrintedStory[];
  /** Counts for books; everything else has a page a sheet. */
  readonly layout: Layout;
  readonly paper: Paper;
  readonly fonts: FontBytes;
  /** The title of a collection. */
  readonly title: string;
  /** The practice pages that are wanted. */
  readonly parts: ReadonlySet<PracticePart>;
  /** Called before each story is set, counted from 0. */
  readonly onStory?: (index: number) => void;
}

/** Something that keeps a document from being what its writer means. */
export interface PrintProblem {
  /** Which of the order's stories it is, from 0. */
  readonly story: number;
  /** Where in the story's file, when it has a place. */
  readonly span?: Span;
  readonly message: string;
}

/** A document, and what is wrong with it: a host that writes files asks for none. */
export interface Printed {
  readonly bytes: Uint8Array;
  /** Sides of paper. */
  readonly sides: number;
  /** In the order of the stories. */
  readonly problems: readonly PrintProblem[];
}
