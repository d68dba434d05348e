import { FileSystemError, Uri, workspace } from 'vscode';
import type { ReadFileResult } from '../../server/src/editor/protocol.ts';
import { isPlainPath } from './plain-path.ts';

/** The text of a file below a workspace folder; null when it is not there or lies outside. Errors of the disk reject. */
export async function readWorkspaceFile(address: string): Promise<ReadFileResult> {
  const uri = Uri.parse(address, true);
  if (!isPlainPath(uri.path) || workspace.getWorkspaceFolder(uri) === undefined) return null;
  try {
    return new TextDecoder().decode(await workspace.fs.readFile(uri));
  } catch (error) {
    if (error instanceof FileSystemError && isAbsence(error.code)) return null;
    throw error;
  }
}

function isAbsence(code: string): boolean {
  return code === 'FileNotFound' || code === 'FileIsADirectory';
}
