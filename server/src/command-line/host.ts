import type { Phonics } from '../phonics/phonics.ts';

/** What came of reading a file. */
export type FileRead =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'missing' }
  /** Larger than `largestFile`; not read. */
  | { readonly kind: 'too-large'; readonly bytes: number }
  /** There, but not to be had as text; the reason completes the sentence "cannot be read: …". */
  | { readonly kind: 'unreadable'; readonly reason: string };

/** An entry of a folder. Links to folders are not listed, so that no walk runs in a circle. */
export interface FolderEntry {
  readonly name: string;
  readonly kind: 'file' | 'folder';
}

/** Files larger than this many bytes are not read. A story has a few thousand. */
export const largestFile = 5_000_000;

/** All that commands need of the machine. Paths are absolute and of the machine's own kind. */
export interface Host {
  /** Relative paths start here. */
  readonly workingFolder: string;
  /** The version of the package. */
  readonly version: string;
  /** True when the output is a terminal whose user wants colours. */
  readonly hasColour: boolean;
  /** Reads a text file as UTF-8, without its byte-order mark. Never throws. */
  readFile(path: string): FileRead;
  /** What stands at a path. Never throws. */
  kindOf(path: string): 'file' | 'folder' | 'missing';
  /** A folder's entries in any order; a reason when it cannot be listed. Never throws. */
  listFolder(path: string): readonly FolderEntry[] | { readonly reason: string };
  /** The phonics of the package; loaded at the first call. */
  phonics(): Phonics;
  /** Writes to the output, for what was asked. */
  writeOutput(text: string): void;
  /** Writes to the error output, for what could not be done. */
  writeError(text: string): void;
}
