import { posix } from 'node:path';
import type { FileRead, FolderEntry, Host } from '../../server/src/command-line/host.ts';
import { run } from '../../server/src/command-line/run.ts';
import { print } from '../../server/src/materials/print.ts';
import type { Phonics } from '../../server/src/phonics/phonics.ts';
import { packageFonts } from './package-fonts.ts';

/** What a run of the command line came to. */
export interface Outcome {
  readonly exitCode: number;
  readonly output: string;
  readonly errors: string;
  /** The files that were written, by their absolute paths; absent when there are none. */
  readonly written?: ReadonlyMap<string, Uint8Array>;
}

/** What stands at a path: a text, bytes, or what reading it comes to. */
export type MemoryFile = string | Uint8Array | FileRead;

/**
 * A terminal in `/home/writer` over files that are given by path; relative ones stand in that folder. A file may also be
 * given as what reading it comes to.
 */
export function terminal(
  files: Readonly<Record<string, MemoryFile>>,
  phonics: Phonics,
  { hasColour = false } = {},
): (...given: readonly string[]) => Outcome {
  const workingFolder = '/home/writer';
  const contents = new Map<string, FileRead>();
  const bytes = new Map<string, Uint8Array>();
  for (const [path, content] of Object.entries(files)) {
    const isBytes = content instanceof Uint8Array;
    const read: FileRead =
      typeof content === 'string'
        ? { kind: 'text', text: content }
        : isBytes
          ? { kind: 'unreadable', reason: 'it is not text in UTF-8' }
          : content;
    contents.set(posix.resolve(workingFolder, path), read);
    if (isBytes) bytes.set(posix.resolve(workingFolder, path), content);
  }
  const below = (folder: string) => [...contents.keys()].filter((path) => path.startsWith(`${folder}/`));
  return (...given) => {
    let output = '';
    let errors = '';
    const written = new Map<string, Uint8Array>();
    const host: Host = {
      workingFolder,
      version: '0.0.0',
      hasColour,
      readFile: (path) => contents.get(path) ?? { kind: 'missing' },
      readBytes: (path) => {
        const found = bytes.get(path);
        if (found !== undefined) return { kind: 'bytes', bytes: found };
        const read = contents.get(path) ?? { kind: 'missing' };
        return read.kind === 'text' ? { kind: 'bytes', bytes: Buffer.from(read.text) } : read;
      },
      realPath: (path) => (contents.has(path) || below(path).length > 0 ? path : undefined),
      writeFile: (path, content) => {
        written.set(path, content);
        return undefined;
      },
      kindOf: (path) => {
        if (contents.has(path)) return 'file';
        return below(path).length > 0 ? 'folder' : 'missing';
      },
      listFolder: (folder) => {
        const entries = new Map<string, FolderEntry>();
        for (const path of below(folder)) {
          const [name = '', ...rest] = path.slice(folder.length + 1).split('/');
          entries.set(name, { name, kind: rest.length === 0 ? 'file' : 'folder' });
        }
        return [...entries.values()];
      },
      phonics: () => phonics,
      printing: () => ({ print, fonts: packageFonts }),
      showProgress: () => {},
      writeOutput: (text) => {
        output += text;
      },
      writeError: (text) => {
        errors += text;
      },
    };
    const exitCode = run(given, host);
    return { exitCode, output, errors, ...(written.size === 0 ? {} : { written }) };
  };
}
