import { readdir, stat } from 'node:fs/promises';
import { join } from 'node:path';

/** Something that happened to a file below the opened folder; the path is relative, with `/` between the names. */
export interface FolderChange {
  readonly path: string;
  readonly type: 'created' | 'changed' | 'deleted';
}

/** What one look at a folder saw: each path with a mark that differs once the file differs. */
export type FolderSnapshot = ReadonlyMap<string, string>;

/** Beyond this many files a folder is looked at only in part: an editor window is not a backup program. */
const mostFiles = 5000;
const skippedFolders = new Set(['node_modules', 'dist']);

/** Looks at all files below a folder, except hidden folders and links. A file that vanishes meanwhile is left out. */
export async function takeSnapshot(root: string): Promise<FolderSnapshot> {
  const snapshot = new Map<string, string>();
  const waiting = [''];
  for (let folder = waiting.shift(); folder !== undefined; folder = waiting.shift()) {
    const entries = await readdir(join(root, folder), { withFileTypes: true }).catch(() => []);
    for (const entry of entries) {
      if (snapshot.size >= mostFiles) return snapshot;
      const path = folder === '' ? entry.name : `${folder}/${entry.name}`;
      if (entry.isDirectory()) {
        snapshot.set(path, 'folder');
        if (!entry.name.startsWith('.') && !skippedFolders.has(entry.name)) waiting.push(path);
      } else if (entry.isFile()) {
        const facts = await stat(join(root, path)).catch(() => undefined);
        if (facts !== undefined) snapshot.set(path, `${facts.mtimeMs} ${facts.size}`);
      }
    }
  }
  return snapshot;
}

/** What happened between two looks. */
export function compareSnapshots(before: FolderSnapshot, after: FolderSnapshot): readonly FolderChange[] {
  const changes: FolderChange[] = [];
  for (const [path, mark] of after) {
    const earlier = before.get(path);
    if (earlier === undefined) changes.push({ path, type: 'created' });
    else if (earlier !== mark) changes.push({ path, type: 'changed' });
  }
  for (const path of before.keys()) if (!after.has(path)) changes.push({ path, type: 'deleted' });
  return changes;
}

/**
 * Tells of changes below a folder until it is stopped, looking twice a second. Looking works alike on every system and
 * for network drives, where the notices of the system differ or fail.
 *
 * @returns a function that stops it.
 */
export function watchFolder(root: string, tell: (changes: readonly FolderChange[]) => void): () => void {
  const pause = 500;
  let isStopped = false;
  let timer: NodeJS.Timeout | undefined;
  const look = async (before: FolderSnapshot | undefined): Promise<void> => {
    const after = await takeSnapshot(root);
    if (isStopped) return;
    const changes = before === undefined ? [] : compareSnapshots(before, after);
    if (changes.length > 0) tell(changes);
    timer = setTimeout(() => void look(after), pause);
  };
  void look(undefined);
  return () => {
    isStopped = true;
    clearTimeout(timer);
  };
}
