import type { Phonics } from '../phonics/phonics.ts';
import { readSequence } from '../sequence/read-sequence.ts';
import { mistakenSequenceNames, sequenceFileName } from '../sequence/sequence-file-name.ts';
import { type Teaching, teachingOf } from '../sequence/teaching.ts';
import { type Snapshot, snapshotOf } from './documents.ts';
import { childOf, isInside, parentOf } from './uri.ts';
import type { Home } from './workspace.ts';

/** One text of a sequence file and all that follows from it. Immutable; compared by identity. */
export interface SequenceFile {
  readonly snapshot: Snapshot;
  readonly teaching: Teaching;
}

/** The sequences of the workspace: the editor's text where the file is open, else the disk's. */
export interface SequenceFiles {
  /** Goes up by one whenever an answer of this object may have changed. */
  readonly generation: number;
  /** How many files are remembered, those known to be absent among them. */
  readonly size: number;
  /** The file at an address (canonical). At once when it is known, else when it is read. */
  at(uri: string, root: string): MaybeLater<SequenceFile | undefined>;
  /** The nearest `sequence.yaml`, from the home's folder up to its root. */
  nearest(home: Home): MaybeLater<SequenceFile | undefined>;
  /** The name of a file in those folders that may be meant for a `sequence.yaml`; asked where there is none. */
  mistakenName(home: Home): Promise<string | undefined>;
  /** What follows from the text of an open document. */
  of(snapshot: Snapshot): SequenceFile;
  /** Takes notice that a file has changed on disk, or in the editor; forgets it. */
  changed(uri: string): void;
  /** Takes notice that anything may have changed on disk. */
  allChanged(): void;
  /** Forgets what no document needs: all files that lie in none of the folders from these homes up to their roots. */
  retain(homes: readonly Home[], named: ReadonlySet<string>): void;
}

/** A value, or the promise of one that has to be read first. */
export type MaybeLater<T> = T | Promise<T>;

interface Source {
  readonly phonics: Phonics;
  /** The open document at a canonical address. */
  readonly open: (uri: string) => Snapshot | undefined;
  /** The text on disk; null when there is none. */
  readonly read: (uri: string, root: string) => Promise<string | null>;
}

/** Remembers at most this many files beside those in the editor; a workspace has few. */
const mostRemembered = 500;

/** Makes the store. It reads nothing before it is asked. */
export function createSequenceFiles({ phonics, open, read }: Source): SequenceFiles {
  let generation = 0;
  const onDisk = new Map<string, MaybeLater<SequenceFile | undefined>>();
  /** What was on disk before a change: a file that was only touched is the same again, and nothing is reviewed anew. */
  const former = new Map<string, SequenceFile>();
  const parsed = new WeakMap<Snapshot, SequenceFile>();

  const of = (snapshot: Snapshot): SequenceFile => {
    let file = parsed.get(snapshot);
    if (file === undefined) {
      const teaching = teachingOf(readSequence(snapshot.document.getText()), phonics);
      file = { snapshot, teaching };
      parsed.set(snapshot, file);
    }
    return file;
  };

  const at = (uri: string, root: string): MaybeLater<SequenceFile | undefined> => {
    const opened = open(uri);
    if (opened !== undefined) return of(opened);
    if (onDisk.has(uri)) return onDisk.get(uri);
    if (onDisk.size >= mostRemembered) {
      onDisk.clear();
      former.clear();
    }
    const reading: Promise<SequenceFile | undefined> = read(uri, root).then(
      (text) => {
        const before = former.get(uri);
        former.delete(uri);
        const isSame = text !== null && before?.snapshot.document.getText() === text;
        const file = isSame ? before : text === null ? undefined : of(snapshotOf(uri, 'yaml', 0, text));
        if (onDisk.get(uri) === reading) onDisk.set(uri, file);
        return file;
      },
      (fault: unknown) => {
        if (onDisk.get(uri) === reading) onDisk.delete(uri);
        throw fault;
      },
    );
    onDisk.set(uri, reading);
    return reading;
  };

  const nearestFrom = (folder: string, root: string): MaybeLater<SequenceFile | undefined> => {
    const found = at(childOf(folder, sequenceFileName), root);
    const orAbove = (file: SequenceFile | undefined): MaybeLater<SequenceFile | undefined> => {
      const above = parentOf(folder);
      if (file !== undefined || folder === root || above === undefined || !isInside(above, root)) return file;
      return nearestFrom(above, root);
    };
    return found instanceof Promise ? found.then(orAbove) : orAbove(found);
  };

  const putAside = (uri: string): void => {
    const file = onDisk.get(uri);
    onDisk.delete(uri);
    if (file !== undefined && !(file instanceof Promise)) former.set(uri, file);
  };

  return {
    get generation() {
      return generation;
    },
    get size() {
      return onDisk.size + former.size;
    },
    at,
    nearest: ({ folder, root }) => nearestFrom(folder, root),
    mistakenName: async ({ folder, root }) => {
      let here: string | undefined = folder;
      while (here !== undefined && isInside(here, root)) {
        for (const name of mistakenSequenceNames) {
          if ((await at(childOf(here, name), root)) !== undefined) return name;
        }
        here = here === root ? undefined : parentOf(here);
      }
      return undefined;
    },
    of,
    changed: (uri) => {
      generation++;
      putAside(uri);
    },
    allChanged: () => {
      generation++;
      for (const uri of [...onDisk.keys()]) putAside(uri);
    },
    retain: (homes, named) => {
      for (const uri of onDisk.keys()) {
        const folder = parentOf(uri);
        const isNeeded =
          named.has(uri) ||
          homes.some(
            (home) => folder !== undefined && isInside(home.folder, folder) && isInside(folder, home.root),
          );
        if (!isNeeded) onDisk.delete(uri);
      }
      former.clear();
    },
  };
}
