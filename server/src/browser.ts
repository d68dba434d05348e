import { BrowserMessageReader, BrowserMessageWriter, createConnection } from 'vscode-languageserver/browser';
import type { Printing, PrintingCode } from './editor/host.ts';
import { systemTimers } from './editor/host.ts';
import { once } from './editor/once.ts';
import { type LexiconMessage, type ReadMeaningsResult, readMeaningsRequest } from './editor/protocol.ts';
import { startServer } from './editor/server.ts';
import { isRecord } from './editor/settings.ts';
import { type ReadPrintingResult, readPrintingRequest } from './editor/workshop/protocol.ts';
import { openPhonics } from './phonics/open-phonics.ts';
import { openThesaurus } from './words/thesaurus.ts';

// The language server in a web worker. It cannot read the extension's files: the client hands over the lexicon first, and
// what comes before it waits.
const early: unknown[] = [];
const worker = globalThis as unknown as DedicatedWorkerGlobalScope;
worker.onmessage = ({ data }: MessageEvent<unknown>) => {
  if (!isLexicon(data)) {
    early.push(data);
    return;
  }
  const phonics = openPhonics(new Uint8Array(data.battledoreLexicon));
  const connection = createConnection(new BrowserMessageReader(worker), new BrowserMessageWriter(worker));
  const thesaurus = once(async () =>
    openThesaurus(await connection.sendRequest<ReadMeaningsResult>(readMeaningsRequest)),
  );
  const printing = once(async (): Promise<Printing> => {
    const { script, fonts } = await connection.sendRequest<ReadPrintingResult>(readPrintingRequest);
    // The extension's own file; a worker's page may forbid scripts from other addresses, but not this.
    const code = new Function(`${script}\nreturn battledorePrint;`)() as PrintingCode;
    return { ...code, fonts, createPreviewer: () => code.createPreviewer(fonts) };
  });
  startServer(connection, { phonics, thesaurus, printing, timers: systemTimers });
  for (const message of early.splice(0)) {
    worker.dispatchEvent(new MessageEvent('message', { data: message }));
  }
};

function isLexicon(data: unknown): data is LexiconMessage {
  return isRecord(data) && data.battledoreLexicon instanceof ArrayBuffer;
}
