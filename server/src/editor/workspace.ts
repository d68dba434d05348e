import { canonicalUri, isInside, parentOf } from './uri.ts';

/** The folders the client has open. */
export interface Workspace {
  readonly folders: readonly string[];
}

/** Where a document belongs. Both addresses canonical. */
export interface Home {
  /** The folder it stands in. */
  readonly folder: string;
  /** The innermost workspace folder around it; its own folder when there is none. Nothing outside is ever read. */
  readonly root: string;
}

/** A workspace of the folders' addresses as the client writes them. */
export function workspaceOf(folders: readonly string[]): Workspace {
  return { folders: [...new Set(folders.map((folder) => canonicalUri(folder)))] };
}

/**
 * Where a document belongs. One that has no place yet (`untitled:`) counts as standing at the top of the first
 * workspace folder, so that a new draft is reviewed before it is saved; without a folder it belongs nowhere.
 */
export function homeOf(uri: string, { folders }: Workspace): Home | undefined {
  const folder = parentOf(canonicalUri(uri));
  if (
    folder === undefined ||
    (uri.startsWith('untitled:') && !folders.some((root) => isInside(folder, root)))
  ) {
    const first = folders[0];
    return first === undefined ? undefined : { folder: first, root: first };
  }
  let root: string | undefined;
  for (const candidate of folders) {
    if (isInside(folder, candidate) && candidate.length > (root?.length ?? 0)) root = candidate;
  }
  return { folder, root: root ?? folder };
}
