import { FileType, Uri, workspace } from 'vscode';
import { toBase64 } from '../../../server/src/editor/workshop/base64.ts';
import type { ReadPicturesParams, ReadPicturesResult } from '../../../server/src/editor/workshop/protocol.ts';
import { picturePath } from './picture-path.ts';

/** The longest picture that is read, in bytes. */
const largest = 50_000_000;

/** Reads the pictures of a story; none outside the story's workspace folder, and none by way of a link. */
export async function readPictures({
  uri,
  addresses,
  stamps,
}: ReadPicturesParams): Promise<ReadPicturesResult> {
  const story = Uri.parse(uri, true);
  const read: ReadPicturesResult[number][] = [];
  for (const [index, address] of addresses.entries())
    read.push(await readPicture(story, address, stamps?.[index] ?? undefined));
  return read;
}

async function readPicture(
  story: Uri,
  address: string,
  knownStamp: string | undefined,
): Promise<ReadPicturesResult[number]> {
  const folder = workspace.getWorkspaceFolder(story)?.uri;
  if (folder === undefined)
    return { trouble: 'is not read, since the story is in no folder of the workspace' };
  const path = picturePath(address, story.path, folder.path);
  if (typeof path !== 'string') return path;
  try {
    // Every part of the way below the folder: a link may lead out of it.
    let at = folder;
    let size = 0;
    let stamp = '';
    for (const name of path.slice(folder.path.length).split('/').filter(Boolean)) {
      at = Uri.joinPath(at, name);
      const stat = await workspace.fs.stat(at);
      if ((stat.type & FileType.SymbolicLink) !== 0)
        return { trouble: 'is reached by a link, and is not read' };
      size = stat.size;
      stamp = `${stat.mtime} ${stat.size}`;
    }
    if (size > largest) return { trouble: 'is too large' };
    if (stamp === knownStamp) return { isUnchanged: true };
    return { base64: toBase64(await workspace.fs.readFile(at)), stamp };
  } catch {
    return { trouble: 'is not there or cannot be read' };
  }
}
