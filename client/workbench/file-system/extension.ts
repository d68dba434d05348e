import * as vscode from 'vscode';
import { folderScheme } from '../agreement.ts';
import { FolderFileSystem } from './folder-file-system.ts';

/** Makes the folder that the host serves the editor's folder. */
export function activate(context: vscode.ExtensionContext): void {
  // The host gives this extension out under a path that holds the key of this run.
  const key = context.extensionUri.path.split('/')[2] ?? '';
  const server = context.extensionUri.with({ path: '/folder', query: '', fragment: '' }).toString(true);
  const fileSystem = new FolderFileSystem(server, key);
  context.subscriptions.push(
    fileSystem,
    vscode.workspace.registerFileSystemProvider(folderScheme, fileSystem, { isCaseSensitive: true }),
  );
}
