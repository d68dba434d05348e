import { readdirSync, readFileSync, realpathSync, type Stats, statSync } from 'node:fs';
import { join } from 'node:path';
import type { Phonics } from '../phonics/phonics.ts';
import {
  type BytesRead,
  type FileRead,
  type FolderEntry,
  type Host,
  largestFile,
  largestPicture,
  type Printing,
} from './host.ts';
import { writeWhole } from './write-whole.ts';

/** The machine as Node gives it. The only place of the command line that touches the disk and the streams. */
export function nodeHost({
  version,
  phonics,
  printing,
}: {
  version: string;
  phonics: () => Phonics;
  printing: () => Printing;
}): Host {
  return {
    workingFolder: process.cwd(),
    version,
    hasColour: process.stdout.isTTY === true && !process.env.NO_COLOR && process.env.TERM !== 'dumb',
    readFile,
    readBytes,
    realPath: (path) => {
      try {
        return realpathSync(path);
      } catch {
        return undefined;
      }
    },
    writeFile: (path, bytes, { overwrites }) => {
      try {
        return writeWhole(path, bytes, overwrites) ? undefined : { reason: 'it is there already' };
      } catch (fault) {
        return { reason: reasonOf(fault) };
      }
    },
    kindOf: (path) => {
      const found = statusOf(path);
      if (found === undefined) return 'missing';
      return found.isDirectory() ? 'folder' : 'file';
    },
    listFolder,
    phonics,
    printing,
    showProgress: (text) => {
      if (process.stderr.isTTY) process.stderr.write(`\r\u001b[2K${text}`);
    },
    writeOutput: (text) => {
      process.stdout.write(text);
    },
    writeError: (text) => {
      process.stderr.write(text);
    },
  };
}

function readFile(path: string): FileRead {
  try {
    const found = statusOf(path);
    if (found === undefined) return { kind: 'missing' };
    if (!found.isFile()) return { kind: 'unreadable', reason: 'it is not a file' };
    if (found.size > largestFile) return { kind: 'too-large', bytes: found.size };
    return { kind: 'text', text: new TextDecoder('utf-8', { fatal: true }).decode(readFileSync(path)) };
  } catch (fault) {
    if (fault instanceof TypeError) return { kind: 'unreadable', reason: 'it is not text in UTF-8' };
    return { kind: 'unreadable', reason: reasonOf(fault) };
  }
}

function readBytes(path: string): BytesRead {
  try {
    const found = statusOf(path);
    if (found === undefined) return { kind: 'missing' };
    if (!found.isFile()) return { kind: 'unreadable', reason: 'it is not a file' };
    if (found.size > largestPicture) return { kind: 'too-large', bytes: found.size };
    return { kind: 'bytes', bytes: readFileSync(path) };
  } catch (fault) {
    return { kind: 'unreadable', reason: reasonOf(fault) };
  }
}

function listFolder(path: string): readonly FolderEntry[] | { readonly reason: string } {
  try {
    return readdirSync(path, { withFileTypes: true }).flatMap((entry): readonly FolderEntry[] => {
      if (entry.isDirectory()) return [{ name: entry.name, kind: 'folder' }];
      const isFile = entry.isFile() || (entry.isSymbolicLink() && statusOf(join(path, entry.name))?.isFile());
      return isFile ? [{ name: entry.name, kind: 'file' }] : [];
    });
  } catch (fault) {
    return { reason: reasonOf(fault) };
  }
}

function statusOf(path: string): Stats | undefined {
  try {
    return statSync(path, { throwIfNoEntry: false });
  } catch {
    // A path through a file, or a name no file can have: nothing stands there.
    return undefined;
  }
}

function reasonOf(fault: unknown): string {
  const code = fault instanceof Error && 'code' in fault ? fault.code : undefined;
  if (code === 'EACCES' || code === 'EPERM') return 'permission is denied';
  return fault instanceof Error ? fault.message : String(fault);
}
