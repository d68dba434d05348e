import { Uri, workspace } from 'vscode';
import type { ReadMeaningsResult } from '../../server/src/editor/protocol.ts';

/** The words by meaning, for a server that can not read the extension's files. @param extensionUri its folder. */
export async function readMeanings(extensionUri: Uri): Promise<ReadMeaningsResult> {
  const bytes = await workspace.fs.readFile(Uri.joinPath(extensionUri, 'server', 'dist', 'meanings.bin'));
  return bytes.slice();
}
