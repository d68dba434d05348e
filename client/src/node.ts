import { type ExtensionContext, Uri } from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node';
import { type Extension, startExtension } from './extension.ts';

let extension: Extension | undefined;

/** Starts Battledore where the extension host is Node: the server is a process of its own. */
export async function activate(context: ExtensionContext): Promise<void> {
  const module = Uri.joinPath(context.extensionUri, 'server', 'dist', 'node.js').fsPath;
  const server = { module, transport: TransportKind.ipc };
  extension = startExtension(
    context,
    (options) => new LanguageClient('battledore', 'Battledore', { run: server, debug: server }, options),
  );
  await extension.started;
}

/** Stops the server. */
export async function deactivate(): Promise<void> {
  await extension?.stop();
}
