import type { ExtensionContext } from 'vscode';
import { LanguageClient } from 'vscode-languageclient/browser';
import { type Extension, startExtension } from './extension.ts';
import { ServerWorker } from './server-worker.ts';

let extension: Extension | undefined;

/** Starts Battledore where the extension host is a web worker: the server is a worker beside it. */
export async function activate(context: ExtensionContext): Promise<void> {
  const worker = new ServerWorker(context.extensionUri);
  context.subscriptions.push(worker);
  extension = startExtension(
    context,
    (options) => new LanguageClient('battledore', 'Battledore', () => worker.start(), options),
  );
  await extension.started;
}

/** Stops the server. */
export async function deactivate(): Promise<void> {
  await extension?.stop();
}
