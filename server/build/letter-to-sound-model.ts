import { readFileSync, writeFileSync } from 'node:fs';
import { brotliCompressSync } from 'node:zlib';
import { openLexicon } from '../src/phonics/lexicon.ts';
import { modelOfEntries } from './letter-to-sound/lexicon-model.ts';

/** Writes `server/generated/letter-to-sound.bin` from `lexicon.bin` beside it. The same lexicon gives the same bytes. */
const generated = new URL('../generated/', import.meta.url);
const lexicon = openLexicon(readFileSync(new URL('lexicon.bin', generated)));
const bytes = modelOfEntries([...lexicon.entries()]);
writeFileSync(new URL('letter-to-sound.bin', generated), bytes);
const kilobytes = (count: number) => `${(count / 1000).toFixed(0)} kB`;
console.log(
  `letter-to-sound.bin: ${kilobytes(bytes.length)}, compressed ${kilobytes(brotliCompressSync(bytes).length)}`,
);
