#!/usr/bin/env node
import { readFileSync } from 'node:fs';
import { exitCodes } from './command-line/command.ts';
import { nodeHost } from './command-line/node-host.ts';
import { run } from './command-line/run.ts';
import { loadPhonics } from './load-phonics.ts';
import { loadPrinting } from './load-printing.ts';
import type { Phonics } from './phonics/phonics.ts';

// A reader that closes the pipe early, as `head` does, is no fault.
process.stdout.on('error', (fault: NodeJS.ErrnoException) => {
  if (fault.code !== 'EPIPE') throw fault;
});

let loaded: Phonics | undefined;
const phonics = (): Phonics => {
  loaded ??= loadPhonics();
  return loaded;
};

try {
  const { version }: { version: string } = JSON.parse(
    readFileSync(new URL('../../package.json', import.meta.url), 'utf8'),
  );
  process.exitCode = run(process.argv.slice(2), nodeHost({ version, phonics, printing: loadPrinting }));
} catch (fault) {
  // Whatever it is, it must not end with the code that says a story falls short.
  process.stderr.write(`Battledore stopped: ${fault instanceof Error ? fault.stack : String(fault)}\n`);
  process.exitCode = exitCodes.unusable;
}
