import { dirname, isAbsolute, join, relative, resolve } from 'node:path';
import { sequenceFindings } from '../review/findings.ts';
import type { Finding } from '../review/review.ts';
import { readSequence } from '../sequence/read-sequence.ts';
import { mistakenSequenceNames, sequenceFileName } from '../sequence/sequence-file-name.ts';
import { type Teaching, teachingOf } from '../sequence/teaching.ts';
import { type LineAndColumn, lineIndex } from '../text/line-index.ts';
import { complain } from './complaint.ts';
import { fileTrouble } from './file-trouble.ts';
import { isInside, withForwardSlashes } from './find-texts.ts';
import type { Host } from './host.ts';

/** A sequence file, read. */
export interface SequenceFile {
  /** As it is shown. */
  readonly path: string;
  readonly teaching: Teaching;
}

/** Finds and reads sequence files, each once. */
export interface SequenceFinder {
  /** The file at an absolute path, or why it cannot be had, to complete a sentence that begins with its name. */
  at(path: string): SequenceFile | { readonly trouble: string };
  /** The nearest `sequence.yaml` from a folder upwards, to the root of the file system. */
  nearest(folder: string): SequenceFile | { readonly trouble: string } | undefined;
  /** The name of a file from there upwards that may be meant for a `sequence.yaml`; asked where there is none. */
  mistakenName(folder: string): string | undefined;
  /** The file that a story names, which must lie inside `root`. */
  named(value: string, folder: string, root: string): SequenceFile | { readonly trouble: string };
  /** How many errors the sequences that were read have. */
  errors(): number;
  /** What is wrong in the sequences that were read; it has been written to the error output already. */
  troubles(): readonly SequenceTrouble[];
}

/** Something wrong in a sequence file, at its place. */
export interface SequenceTrouble {
  /** As it is shown. */
  readonly path: string;
  readonly at: LineAndColumn;
  readonly message: string;
  readonly severity: Finding['severity'];
}

/** Makes a finder; the problems of each sequence are written to the error output when it is first read. */
export function createSequenceFinder(host: Host): SequenceFinder {
  const known = new Map<string, SequenceFile | { readonly trouble: string }>();
  const troubles: SequenceTrouble[] = [];
  let errors = 0;

  const at = (path: string): SequenceFile | { readonly trouble: string } => {
    let file = known.get(path);
    if (file === undefined) {
      file = read(path);
      known.set(path, file);
    }
    return file;
  };
  const read = (path: string): SequenceFile | { readonly trouble: string } => {
    const content = host.readFile(path);
    if (content.kind !== 'text') return { trouble: fileTrouble(content) };
    const teaching = teachingOf(readSequence(content.text), host.phonics());
    const findings = sequenceFindings(teaching.problems);
    const shown = shownPath(path, host);
    const place = lineIndex(content.text);
    for (const { span, message, rule, severity } of findings) {
      const at = place(span.start);
      complain({ path: shown, at, message, rule }, host);
      troubles.push({ path: shown, at, message, severity });
      if (severity === 'error') errors++;
    }
    return { path: shown, teaching };
  };

  const mistakenNameIn = (folder: string): string | undefined =>
    mistakenSequenceNames.find((name) => host.kindOf(join(folder, name)) === 'file');
  const paths = new Map<string, string | undefined>();
  const nearestPath = (folder: string): string | undefined => {
    if (paths.has(folder)) return paths.get(folder);
    const own = join(folder, sequenceFileName);
    const above = dirname(folder);
    const isHere = host.kindOf(own) === 'file';
    const path = isHere ? own : above === folder ? undefined : nearestPath(above);
    const mistaken = isHere || path === undefined ? undefined : mistakenNameIn(folder);
    if (mistaken !== undefined && path !== undefined) {
      const message = `This file is not read: rename it to ${sequenceFileName}. Used in its place is ${shownPath(path, host)}.`;
      complain({ path: shownPath(join(folder, mistaken), host), message }, host);
    }
    paths.set(folder, path);
    return path;
  };

  return {
    at,
    nearest: (folder) => {
      const path = nearestPath(folder);
      return path === undefined ? undefined : at(path);
    },
    mistakenName: (folder) => {
      for (let here = folder; ; here = dirname(here)) {
        const found = mistakenNameIn(here);
        if (found !== undefined || dirname(here) === here) return found;
      }
    },
    named: (value, folder, root) => {
      if (isAbsolute(value) || /^[a-z]+:/i.test(value)) {
        return {
          trouble: 'is not a relative path; give the way from the story’s folder to the sequence file',
        };
      }
      const path = resolve(folder, value);
      if (!isInside(path, root)) {
        return {
          trouble: `leads out of ${shownPath(root, host)}; the sequence file must lie inside it, or be given with --sequence`,
        };
      }
      return at(path);
    },
    errors: () => errors,
    troubles: () => troubles,
  };
}

function shownPath(path: string, { workingFolder }: Host): string {
  return withForwardSlashes(isInside(path, workingFolder) ? relative(workingFolder, path) || '.' : path);
}
