import type { Counts } from '../review/review.ts';

/**
 * The messages of our own between server and client, beside the Language Server Protocol.
 * Lines and characters count from 0, as in that protocol.
 */

/** A range as the Language Server Protocol has it. */
export interface ProtocolRange {
  readonly start: { readonly line: number; readonly character: number };
  readonly end: { readonly line: number; readonly character: number };
}

/** The problems of a story's sequence, in number, and where the gravest of them stands first. */
export interface SequenceProblems {
  readonly uri: string;
  readonly count: number;
  /** How many of them are errors. */
  readonly errors: number;
  readonly range: ProtocolRange;
}

/** What the gauge shows of one version of a story. Plain data. */
export interface Gauge {
  readonly uri: string;
  readonly version: number;
  readonly title: string;
  /** Name and title of the story's lesson, and the address of its sequence. */
  readonly lesson: {
    readonly name: string;
    readonly title?: string;
    readonly sequenceUri: string;
    /** Where the lesson's name stands in the sequence. */
    readonly range?: ProtocolRange;
  };
  /** What is wrong in the sequence, and where first; absent when nothing is. */
  readonly sequenceProblems?: SequenceProblems;
  readonly counts: Counts;
  /** Shares from 0 to 1. */
  readonly readable: number;
  readonly decodable: number;
  readonly target: number;
  readonly passes: boolean;
  /** The words the children cannot read yet, in the order of the text, one row a different word. */
  readonly notTaught: readonly {
    readonly word: string;
    readonly why: string;
    readonly ranges: readonly ProtocolRange[];
  }[];
  readonly newSpellings: readonly {
    readonly letters: string;
    readonly keyWord: string;
    /** Running words that use it. */
    readonly ranges: readonly ProtocolRange[];
  }[];
  /** The least number of running words that should use a new spelling. */
  readonly practice: { readonly words: number; readonly atLeast: number };
  readonly newHighFrequencyWords: readonly {
    readonly word: string;
    readonly atLeast: number;
    readonly ranges: readonly ProtocolRange[];
  }[];
  readonly sentences: {
    readonly atMost: number;
    readonly each: readonly { readonly words: number; readonly range: ProtocolRange }[];
  };
  readonly pages: {
    readonly atMost: number;
    readonly each: readonly {
      readonly number: number;
      readonly words: number;
      readonly counts: Counts;
      readonly range: ProtocolRange;
    }[];
  };
  readonly findings: number;
  /** True when the text is too long, so that its end is not read and no figure holds for it. */
  readonly isCut?: true;
}

/**
 * Server to client, after each review of an open document: the gauge of that version, or the reason why there is none
 * (no lesson in the front matter: not a story; no sequence found; a lesson the sequence does not have).
 */
export const gaugeNotification = 'battledore/gauge';
/** What `battledore/gauge` carries. */
export type GaugeParams =
  | { readonly uri: string; readonly version: number; readonly gauge: Gauge }
  | {
      readonly uri: string;
      readonly version: number;
      readonly reason: 'not-a-story' | 'no-sequence' | 'no-such-lesson' | 'too-large';
      readonly message: string;
      /** What is wrong in the sequence that lacks the lesson; absent when nothing is. */
      readonly sequenceProblems?: SequenceProblems;
    };

/**
 * Server to client: read a file below a workspace folder (a sequence the editor has not open). Needed in the browser,
 * where the server has no disk; the answer is null when there is no such file.
 */
export const readFileRequest = 'battledore/readFile';
/** What `battledore/readFile` asks for. */
export interface ReadFileParams {
  readonly uri: string;
}
/** What it answers: the text, or null when the file is not there. */
export type ReadFileResult = string | null;

/**
 * Server to client: the bytes of `server/dist/meanings.bin`, which quick fixes need. Asked for once, by a server in a web
 * worker, that can not read the extension's files itself; the answer goes by structured clone, not as JSON.
 */
export const readMeaningsRequest = 'battledore/readMeanings';
/** What `battledore/readMeanings` answers. */
export type ReadMeaningsResult = Uint8Array;

/** What the client hands over at `initialize`. */
export interface InitializationOptions {
  /** True when the client answers `battledore/readFile`; a server on Node reads the disk itself when false. */
  readonly readsFiles?: boolean;
  /** True when the client answers `battledore/listFiles`; without it a server that has no disk keeps no index of stories. */
  readonly listsFiles?: boolean;
  /**
   * True when the client has the commands `battledore.goTo` and `battledore.changedElsewhere`, which take the address of a file and
   * a place in it.
   */
  readonly goesToPlaces?: boolean;
  /** The settings, for a client that cannot be asked for them. */
  readonly settings?: Partial<Settings>;
}

/** The settings the server reads, section `battledore`. */
export interface Settings {
  /** How hovers write sounds. */
  readonly sounds: 'dictionary' | 'ipa';
  /** The longest file that is read, in kilobytes of 1024 characters (UTF-16 code units). */
  readonly largestFile: number;
}

/**
 * Browser client to worker, as the very first message and outside the protocol: the bytes of `server/dist/words.bin`.
 * A worker can not read the extension's files itself.
 */
export interface LexiconMessage {
  readonly battledoreLexicon: ArrayBuffer;
}

/**
 * Server to client: the files below a workspace folder that may be stories or sequences (names that end in .md, .markdown,
 * .yaml, .yml). Needed where the server has no disk. Folders whose name begins with a dot and node_modules are passed by.
 */
export const listFilesRequest = 'battledore/listFiles';
/** What `battledore/listFiles` asks for. */
export interface ListFilesParams {
  /** The address of the folder. */
  readonly folder: string;
  /** Files at most. */
  readonly most: number;
}
/** What it answers: addresses, in any order. */
export type ListFilesResult = readonly string[];

/** How a story stands that need not be open. */
export interface StoryStanding {
  readonly uri: string;
  readonly title: string;
  /** The name of its lesson. */
  readonly lesson: string;
  readonly passes: boolean;
  /** Shares from 0 to 1; 0 where the sequence lacks the lesson. */
  readonly readable: number;
  readonly target: number;
  /** What it falls short of, in few words; empty when it passes. */
  readonly why: string;
}

/**
 * Server to client, when the index of all stories of the workspace has been made, and whenever it says something else: the
 * stories that fall short, and those that turned since the last time. Never a word of single findings.
 */
export const storiesNotification = 'battledore/stories';
/** What `battledore/stories` carries. */
export interface StoriesParams {
  /** How many stories the index has. */
  readonly stories: number;
  /** Files that were left out, since the workspace has more than are kept. */
  readonly leftOut: number;
  /** In the order of their addresses. */
  readonly failing: readonly StoryStanding[];
  /** Stories that pass now and did not before (`gains`), or the other way round (`loses`). */
  readonly turned: readonly {
    readonly uri: string;
    readonly title: string;
    readonly turn: 'gains' | 'loses';
  }[];
}

/**
 * Client to server, on command only: put what is found in all stories into the client's list of problems, also of those
 * that are not open, and keep it current; or take it away again. Answers how many stories were checked and fall short.
 */
export const checkStoriesRequest = 'battledore/checkStories';
/** What `battledore/checkStories` asks for. */
export interface CheckStoriesParams {
  readonly show: boolean;
}
/** What it answers. */
export interface CheckStoriesResult {
  readonly stories: number;
  readonly failing: number;
}

/**
 * Client to server: what a changed sequence would do to the stories that follow it. Compares with the file as it is saved;
 * without `text` the text that the editor has is tried. Null when there is no such sequence.
 */
export const whatIfRequest = 'battledore/whatIf';
/** What `battledore/whatIf` asks for. */
export interface WhatIfParams {
  readonly sequenceUri: string;
  readonly text?: string;
}
/** What it answers: the stories that would stand otherwise, in the order of their addresses. */
export interface WhatIfResult {
  /** How many stories follow the sequence. */
  readonly stories: number;
  readonly changed: readonly {
    readonly uri: string;
    readonly title: string;
    readonly turn: 'gains' | 'loses' | 'rises' | 'falls';
    /** Absent where that text lacks the story's lesson. */
    readonly before?: StoryStanding;
    readonly after?: StoryStanding;
  }[];
}
