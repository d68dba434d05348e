import type { TableName } from '../../series/report/tables.ts';
import type { Gap } from '../../series/series.ts';
import type { ProtocolRange } from '../protocol.ts';

/**
 * Client to server: the whole series along one sequence, as the editor has the files now. Null when no story of the
 * workspace follows a sequence.
 */
export const seriesRequest = 'battledore/series';
/** What `battledore/series` asks for. */
export interface SeriesParams {
  /** The sequence, or a story that follows it, where there are several; without it the one with the most stories. */
  readonly uri?: string;
}
/** What it answers. Lists of stories, and `uses`, are in the order of the year. */
export interface SeriesAnswer {
  /** The address of the sequence. */
  readonly uri: string;
  readonly title: string;
  /** All sequences that stories of the workspace follow. */
  readonly sequences: readonly { readonly uri: string; readonly title: string; readonly stories: number }[];
  /** The limits that gaps are measured by, in a sentence. */
  readonly limits: string;
  readonly stories: readonly SeriesStory[];
  readonly spellings: readonly SeriesRow[];
  readonly highFrequencyWords: readonly SeriesRow[];
  /** Different words of all stories. */
  readonly differentWords: number;
  readonly gaps: readonly SeriesGaps[];
}

/** A story of a series. */
export interface SeriesStory {
  readonly uri: string;
  readonly title: string;
  readonly lesson: string;
  /** The place of its lesson in the sequence, from 0. */
  readonly lessonIndex: number;
  readonly passes: boolean;
  /** What it falls short of, in few words; empty when it passes. */
  readonly why: string;
  /** Shares from 0 to 1. */
  readonly readable: number;
  readonly target: number;
  /** Running words. */
  readonly words: number;
  /** Words a sentence. */
  readonly meanSentence: number;
  readonly longestSentence: number;
  /** Words that no earlier story has, as written. */
  readonly newWords: readonly string[];
  readonly wordsSoFar: number;
  /** Grades; absent for a story without words. */
  readonly fleschKincaid?: number;
  readonly spache?: number;
}

/** Uses of a spelling or a high-frequency word. */
export interface SeriesRow {
  readonly label: string;
  readonly lesson: string;
  readonly lessonIndex: number;
  readonly total: number;
  readonly uses: readonly number[];
}

/** Gaps of one kind. */
export interface SeriesGaps {
  readonly kind: Gap['kind'];
  readonly heading: string;
  readonly gaps: readonly {
    readonly message: string;
    /** The file to open, and where. */
    readonly uri: string;
    readonly place: SeriesPlace;
  }[];
}

/** A place of a story or of the sequence. */
export type SeriesPlace =
  /** What first keeps the story from passing; its beginning when it passes. */
  | { readonly kind: 'story' }
  /** The first word of the story that uses a spelling, named as in a row. */
  | { readonly kind: 'spelling'; readonly spelling: string }
  /** Where the story first has a word. */
  | { readonly kind: 'word'; readonly word: string }
  /** A lesson of the sequence. */
  | { readonly kind: 'lesson'; readonly lesson: string };

/** Client to server: where in a file of a series something stands. Null when it is not there any more. */
export const seriesPlaceRequest = 'battledore/seriesPlace';
/** What `battledore/seriesPlace` asks for. */
export interface SeriesPlaceParams {
  readonly uri: string;
  readonly place: SeriesPlace;
}
/** What it answers. */
export type SeriesPlaceResult = ProtocolRange | null;

/** Server to client, once a series has been asked for: it may be another now. */
export const seriesChangedNotification = 'battledore/seriesChanged';

/** Client to server: the series as a report to keep. Null when there is none. */
export const seriesReportRequest = 'battledore/seriesReport';
/** What `battledore/seriesReport` asks for. */
export interface SeriesReportParams extends SeriesParams {
  readonly format: 'html' | 'json' | 'csv';
  /** The table of a CSV report. */
  readonly table?: TableName;
}
/** What it answers: the text of the file. */
export type SeriesReportResult = string | null;
