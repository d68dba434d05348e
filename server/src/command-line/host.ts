import type { FontBytes } from '../materials/layout/font-files.ts';
import type { Printed, PrintOrder } from '../materials/order.ts';
import type { Phonics } from '../phonics/phonics.ts';

/** What came of reading a file. */
export type FileRead =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'missing' }
  /** Larger than `largestFile`; not read. */
  | { readonly kind: 'too-large'; readonly bytes: number }
  /** There, but not to be had as text; the reason completes the sentence "cannot be read: …". */
  | { readonly kind: 'unreadable'; readonly reason: string };

/** What came of reading a file that is no text. */
export type BytesRead =
  | { readonly kind: 'bytes'; readonly bytes: Uint8Array }
  | Exclude<FileRead, { readonly kind: 'text' }>;

/** The code that makes PDF, which is loaded only when it is wanted, and the fonts it needs. */
export interface Printing {
  print(order: PrintOrder): Printed;
  readonly fonts: FontBytes;
}

/** An entry of a folder. Links to folders are not listed, so that no walk runs in a circle. */
export interface FolderEntry {
  readonly name: string;
  readonly kind: 'file' | 'folder';
}

/** Files larger than this many bytes are not read. A story has a few thousand. */
export const largestFile = 5_000_000;

/** Pictures larger than this many bytes are not read. */
export const largestPicture = 50_000_000;

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
  /** Reads a file of at most `largestPicture` bytes. Never throws. */
  readBytes(path: string): BytesRead;
  /** Where a path leads when all links are followed; undefined when nothing is there. Never throws. */
  realPath(path: string): string | undefined;
  /**
   * Writes a file, whole or not at all, with the folders it needs; an existing one only if `overwrites`. Gives why it could
   * not be written, if so. Never throws.
   */
  writeFile(
    path: string,
    bytes: Uint8Array,
    options: { readonly overwrites: boolean },
  ): { readonly reason: string } | undefined;
  /** What stands at a path. Never throws. */
  kindOf(path: string): 'file' | 'folder' | 'missing';
  /** A folder's entries in any order; a reason when it cannot be listed. Never throws. */
  listFolder(path: string): readonly FolderEntry[] | { readonly reason: string };
  /** The phonics of the package; loaded at the first call. */
  phonics(): Phonics;
  /** The code and fonts for printing; loaded at the first call. */
  printing(): Printing;
  /** Shows how far a long run is, in place of what was shown before; empty takes it away. Only on a terminal. */
  showProgress(text: string): void;
  /** Writes to the output, for what was asked. */
  writeOutput(text: string): void;
  /** Writes to the error output, for what could not be done. */
  writeError(text: string): void;
}
