import { posix } from 'node:path';
import type { FileRead, FolderEntry, Host } from '../../server/src/command-line/host.ts';
import { run } from '../../server/src/command-line/run.ts';
import type { Phonics } from '../../server/src/phonics/phonics.ts';

/** What a run of the command line came to. */
export interface Outcome {
  readonly exitCode: number;
  readonly output: string;
  readonly errors: string;
}

/**
 * A terminal in `/home/writer` over files that are given by path; relative ones stand in that folder. A file may also be
 * given as what reading it comes to.
 */
export function terminal(
  files: Readonly<Record<string, string | FileRead>>,
  phonics: Phonics,
  { hasColour = false } = {},
): (...given: readonly string[]) => Outcome {
  const workingFolder = '/home/writer';
  const contents = new Map<string, FileRead>();
  for (const [path, content] of Object.entries(files)) {
    const read: FileRead = typeof content === 'string' ? { kind: 'text', text: content } : content;
    contents.set(posix.resolve(workingFolder, path), read);
  }
  const below = (folder: string) => [...contents.keys()].filter((path) => path.startsWith(`${folder}/`));
  return (...given) => {
    let output = '';
    let errors = '';
    const host: Host = {
      workingFolder,
      version: '0.0.0',
      hasColour,
      readFile: (path) => contents.get(path) ?? { kind: 'missing' },
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
      writeOutput: (text) => {
        output += text;
      },
      writeError: (text) => {
        errors += text;
      },
    };
    const exitCode = run(given, host);
    return { exitCode, output, errors };
  };
}
