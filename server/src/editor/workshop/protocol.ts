import type { Layout, Paper } from '../../materials/layout/paper.ts';
import type { Material, PracticePart } from '../../materials/order.ts';
import type { PictureSource, ShownDocument } from '../../materials/preview/shown-document.ts';
import type { WordPlace } from '../../words/word-query.ts';

/** An answer that cannot be given, with the reason as a sentence for the writer. */
export interface NoAnswer {
  readonly message: string;
}

/** Client to server: the words that can be read at the lesson of an open story. */
export const wordsRequest = 'battledore/words';
/** What words are wanted; what is absent does not matter. */
export interface WordsParams {
  /** An open story. */
  readonly uri: string;
  /** As people write it: `sh`, `a_e`, `ow as in snow`. */
  readonly spelling?: string;
  /** A code or a sign of either notation. */
  readonly sound?: string;
  readonly place?: WordPlace;
  /** How many sounds, or syllables, exactly. */
  readonly sounds?: number;
  readonly syllables?: number;
  readonly partOfSpeech?: 'noun' | 'verb' | 'adjective' | 'adverb';
  readonly isNew?: boolean;
  /** True for words that the story uses, false for the others. */
  readonly isUsed?: boolean;
  /** Words at most. */
  readonly limit: number;
}
/** The words, the most useful first. */
export interface WordsAnswer {
  readonly lesson: string;
  readonly words: readonly {
    readonly word: string;
    /** Its sounds in the notation of the settings; empty where they are not known. */
    readonly sounds: string;
    readonly isNew: boolean;
  }[];
  readonly hasMore: boolean;
}

/** Client to server: a word-building chain for the lesson of an open story. */
export const chainRequest = 'battledore/chain';
/** What chain is wanted. */
export interface ChainParams {
  readonly uri: string;
  /** From 2 to 40 words. */
  readonly length: number;
  readonly start?: string;
  /** A whole number; another gives another chain. */
  readonly seed: number;
}
/** The chain, as long as asked or the longest that was found. */
export interface ChainAnswer {
  readonly lesson: string;
  readonly length: number;
  readonly isComplete: boolean;
  /** True when surely no longer chain of these words exists. */
  readonly isLongest: boolean;
  readonly links: readonly {
    readonly word: string;
    /** The letters that are other than in the word before, as offsets into the word; none for the first and after a drop. */
    readonly changed: readonly { readonly start: number; readonly end: number }[];
    readonly step?: {
      readonly kind: 'change' | 'add' | 'drop';
      readonly from?: string;
      readonly to?: string;
    };
  }[];
}

/** Client to server: a text against every lesson of the sequence that lies nearest to a file. */
export const fitRequest = 'battledore/fit';
/** What is to be fitted. */
export interface FitParams {
  /** The file whose sequence counts. */
  readonly uri: string;
  readonly text: string;
}
/** How the text stands; shares from 0 to 1. */
export interface FitAnswer {
  readonly words: number;
  readonly differentWords: number;
  readonly lessons: readonly {
    readonly name: string;
    readonly readable: number;
    readonly target: number;
    readonly reaches: boolean;
  }[];
  /** The first lesson that reaches its target. */
  readonly first?: string;
  /** The lesson from which on every target is reached. */
  readonly lasting?: string;
  /** What is missing at the lesson before the first, or at the last. */
  readonly heldBack?: {
    readonly lesson: string;
    readonly readable: number;
    readonly things: readonly {
      readonly label: string;
      readonly rise: number;
      readonly words: readonly string[];
    }[];
    /** Names and story words, which count in the whole only. */
    readonly declared: readonly string[];
    /** Words that no lesson makes readable. */
    readonly never: readonly string[];
  };
}

/** Client to server: an open story as PDF. */
export const printRequest = 'battledore/print';
/** What is to be printed. */
export interface PrintParams {
  readonly uri: string;
  readonly material: Material;
  readonly layout: Layout;
  readonly paper: Paper;
  /** The practice pages that are wanted. */
  readonly parts: readonly PracticePart[];
}
/** The document, in base 64 since a line between processes carries text. */
export interface PrintAnswer {
  readonly pdf: string;
  readonly sides: number;
}

/** Client to server: stories of the workspace, open or not, as one book. The answer is that of `battledore/print`. */
export const printCollectionRequest = 'battledore/printCollection';
/** Which stories, in the order of the book. */
export interface PrintCollectionParams extends Pick<PrintParams, 'layout' | 'paper'> {
  readonly uris: readonly string[];
}

/** Client to server: an open story as it would be printed now, to be looked at. */
export const previewRequest = 'battledore/preview';
/** What is to be seen. */
export interface PreviewParams extends PrintParams {
  /** The keys of the pictures that the view has already. */
  readonly known: readonly string[];
}
/** The pages, and what keeps them from being printed; problems leave an empty frame or box on the page. */
export interface PreviewAnswer {
  readonly document: ShownDocument;
  /** The pictures of the document by address; the data, in base 64, only of those that the view does not have. */
  readonly pictures: readonly {
    readonly address: string;
    /** The same key is the same picture. */
    readonly key: string;
    readonly data?: { readonly type: PictureSource['type']; readonly base64: string };
  }[];
  readonly problems: readonly {
    /** Counted from 1; absent for what has no place. */
    readonly line?: number;
    readonly message: string;
  }[];
}

/** Server to client: the pictures of a story, by their addresses as it writes them. */
export const readPicturesRequest = 'battledore/readPictures';
/** What pictures are wanted. */
export interface ReadPicturesParams {
  readonly uri: string;
  readonly addresses: readonly string[];
  /** The stamps of the pictures that the server has, in the order of the addresses; `null` where it has none. */
  readonly stamps?: readonly (string | null)[];
}
/**
 * Each picture in base 64 with a stamp that changes when the file does, or that it is as it was, or why it cannot be had;
 * in the order of the addresses.
 */
export type ReadPicturesResult = readonly (
  | { readonly base64: string; readonly stamp: string }
  | { readonly isUnchanged: true }
  | { readonly trouble: string }
)[];

/** Server in a web worker to client: the code that makes PDF and its fonts, asked for once. */
export const readPrintingRequest = 'battledore/readPrinting';
/** The script's text, and the bytes of its fonts by name of use. */
export interface ReadPrintingResult {
  readonly script: string;
  readonly fonts: {
    readonly regular: Uint8Array;
    readonly regularExtended: Uint8Array;
    readonly bold: Uint8Array;
    readonly boldExtended: Uint8Array;
  };
}
