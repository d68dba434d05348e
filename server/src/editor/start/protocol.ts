import type { ColumnUse } from '../../start/column-uses.ts';
import type { StoryWish } from '../../start/new-story.ts';
import type { Problem } from '../../text/problem.ts';
import type { ProtocolRange } from '../protocol.ts';

/** Client to server: the sequence that holds for a file or folder, open or not. */
export const sequenceRequest = 'battledore/sequence';
/** Whose sequence is asked for. */
export interface SequenceParams {
  /** A file; it need not exist. */
  readonly uri: string;
}
/** The nearest sequence beside the file or above it. */
export interface SequenceAnswer {
  readonly lessons: readonly { readonly name: string; readonly title?: string }[];
  /** The lessons as CSV, with its byte-order mark. */
  readonly csv: string;
}

/** Client to server: the text of a story to begin with, by the sequence that holds for a file; null when there is none. */
export const newStoryRequest = 'battledore/newStory';
/** What the story is to be. */
export interface NewStoryParams extends StoryWish {
  /** The file it will be; it need not exist. */
  readonly uri: string;
}
/** The story. */
export interface NewStoryAnswer {
  readonly text: string;
  /** How many pages it has: more than were asked for where these cannot hold the practice of the lesson. */
  readonly pages: number;
}

/** Client to server: a table of lessons as a sequence; nothing is written. */
export const importSequenceRequest = 'battledore/importSequence';
/** The table. */
export interface ImportSequenceParams {
  /** The whole text of a CSV file. */
  readonly text: string;
  /** What each column is taken for; by its heading where this is left out. */
  readonly uses?: readonly ColumnUse[];
}
/** What the table comes to. */
export interface ImportSequenceAnswer {
  readonly columns: readonly {
    readonly heading: string;
    readonly use: ColumnUse;
    /** The first text below the heading; empty when there is none. */
    readonly example: string;
  }[];
  readonly lessons: number;
  /** What was not understood or had to be supplied, at its place in the table. */
  readonly problems: readonly {
    readonly message: string;
    readonly severity: Problem['severity'];
    readonly range: ProtocolRange;
  }[];
  /** The text of the sequence file. */
  readonly sequence: string;
}
