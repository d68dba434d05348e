import { FileType, Uri, workspace } from 'vscode';
import type { ListFilesParams, ListFilesResult } from '../../../server/src/editor/protocol.ts';
import { isPlainPath } from '../plain-path.ts';

/**
 * The markdown and YAML files below a workspace folder, nearer ones first, through the editor's own file system: on a disk,
 * in the browser, in a repository that is only looked at. What cannot be read is passed by.
 */
export async function listWorkspaceFiles({ folder, most }: ListFilesParams): Promise<ListFilesResult> {
  const top = Uri.parse(folder, true);
  if (!isPlainPath(top.path) || workspace.getWorkspaceFolder(top) === undefined) return [];
  const found: string[] = [];
  const waiting = [top];
  for (let next = waiting.shift(); next !== undefined && found.length < most; next = waiting.shift()) {
    const entries = await workspace.fs.readDirectory(next).then(
      (read) => read,
      () => [],
    );
    for (const [name, type] of entries) {
      const uri = Uri.joinPath(next, name);
      // Links to folders are not followed, so that no walk runs in a circle.
      if (type === FileType.Directory && !name.startsWith('.') && name !== 'node_modules') waiting.push(uri);
      if ((type & FileType.File) !== 0 && /\.(md|markdown|ya?ml)$/i.test(name)) found.push(uri.toString());
    }
  }
  return found.slice(0, most);
}
