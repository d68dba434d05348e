import { FileSystemError, Uri, workspace } from 'vscode';
import type { ReadFileResult } from '../../server/src/editor/protocol.ts';
import { isPlainPath } from './plain-path.ts';

/**
 * The text of a file below a workspace folder, or beside an open file that belongs to no workspace folder; null when it
 * is not there or lies elsewhere. Errors of the disk reject.
 */
export async function readWorkspaceFile(address: string): Promise<ReadFileResult> {
  const uri = Uri.parse(address, true);
  if (!isPlainPath(uri.path) || !mayRead(uri)) return null;
  try {
    return new TextDecoder().decode(await workspace.fs.readFile(uri));
  } catch (error) {
    if (error instanceof FileSystemError && isAbsence(error.code)) return null;
    throw error;
  }
}

function mayRead(uri: Uri): boolean {
  if (workspace.getWorkspaceFolder(uri) !== undefined) return true;
  const folder = folderOf(uri);
  return workspace.textDocuments.some((document) => folderOf(document.uri) === folder);
}

function folderOf(uri: Uri): string {
  return uri.with({ path: uri.path.replace(/[^/]*$/, '') }).toString();
}

function isAbsence(code: string): boolean {
  return code === 'FileNotFound' || code === 'FileIsADirectory';
}
