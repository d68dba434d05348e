import { type Disposable, Uri, workspace } from 'vscode';
import type { MessageTransports } from 'vscode-languageclient';
import { BrowserMessageReader, BrowserMessageWriter } from 'vscode-languageclient/browser';
import type { LexiconMessage } from '../../server/src/editor/protocol.ts';

/** The server in a web worker. At most one runs; a new start ends the one before. */
export class ServerWorker implements Disposable {
  readonly #folder: Uri;
  #worker: Worker | undefined;

  /** @param extensionUri the folder of the extension, of any scheme that `workspace.fs` reads. */
  constructor(extensionUri: Uri) {
    this.#folder = Uri.joinPath(extensionUri, 'server', 'dist');
  }

  /**
   * Starts a worker and hands it the words; rejects when a file of the extension can not be read.
   *
   * @returns the two ends of its line. Not the worker: the client would not know it for one, since the extension host
   * has a class of its own for them.
   */
  async start(): Promise<MessageTransports> {
    this.dispose();
    const [script, lexicon] = await Promise.all([
      this.#scriptAddress(),
      workspace.fs.readFile(Uri.joinPath(this.#folder, 'words.bin')),
    ]);
    const worker = new Worker(script.address);
    script.release();
    const battledoreLexicon = lexicon.slice().buffer;
    const message: LexiconMessage = { battledoreLexicon };
    worker.postMessage(message, [battledoreLexicon]);
    this.#worker = worker;
    return { reader: new BrowserMessageReader(worker), writer: new BrowserMessageWriter(worker) };
  }

  /** Ends the worker. */
  dispose(): void {
    this.#worker?.terminate();
    this.#worker = undefined;
  }

  async #scriptAddress(): Promise<{ address: string; release: () => void }> {
    const script = Uri.joinPath(this.#folder, 'browser.js');
    if (script.scheme !== 'vscode-remote') return { address: script.toString(true), release: () => {} };
    // The browser host refuses a worker from a remote extension's address but takes its text.
    const text = await workspace.fs.readFile(script);
    const address = URL.createObjectURL(new Blob([text.slice()], { type: 'text/javascript' }));
    // The worker fetches its script in its own time; the address is given back long after.
    return { address, release: () => setTimeout(() => URL.revokeObjectURL(address), 60_000) };
  }
}
