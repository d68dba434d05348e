import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { systemTimers } from './editor/host.ts';
import { once } from './editor/once.ts';
import { startServer } from './editor/server.ts';
import { listFiles } from './list-files.ts';
import { loadPhonics } from './load-phonics.ts';
import { loadPrinting } from './load-printing.ts';
import { loadThesaurus } from './load-thesaurus.ts';
import { readFileInside } from './read-file-inside.ts';

// The language server on Node: `node server/dist/node.js --stdio`, or started by the extension over IPC.
startServer(createConnection(ProposedFeatures.all), {
  phonics: loadPhonics(),
  readFile: readFileInside,
  listFiles,
  thesaurus: once(loadThesaurus),
  printing: once(async () => loadPrinting()),
  timers: systemTimers,
});
