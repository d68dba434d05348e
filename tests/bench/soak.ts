import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import { makeEdits, middleLine } from './edits.ts';
import { LanguageClient } from './language-client.ts';
import { spreadOf } from './measures.ts';
import { storyOf } from './stories.ts';

/**
 * `npm run soak -- --minutes 60`: one server for a long time. Stories are opened, edited, asked about and closed without a
 * pause; its memory is looked at every two seconds. Flat means that the median of the last quarter is at most a tenth above that
 * of the second. Exit code 1 when it is not.
 */
const { values } = parseArgs({ options: { minutes: { type: 'string', default: '60' } } });
const minutes = Number(values.minutes);
const root = fileURLToPath(new URL('../..', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'battledore-soak-'));
const folderUri = pathToFileURL(folder).href;
writeFileSync(join(folder, 'sequence.yaml'), readFileSync(join(root, 'samples/sequence.yaml')));
const client = new LanguageClient(join(root, 'server/dist/node.js'));
await client.initialize(folderUri);
const samples: number[] = [];
const begin = performance.now();
const end = begin + minutes * 60_000;
let edits = 0;
let stories = 0;
for (let next = begin; performance.now() < end; stories++) {
  const uri = `${folderUri}/story-${stories % 50}.md`;
  const text = storyOf(300, String(4 + (stories % 30)), stories + 1);
  await client.open(uri, text);
  edits += (await makeEdits(client, uri, text, 40)).times.length;
  await client.completions(uri, middleLine(text), 1);
  const [marked] = client.latest;
  if (marked !== undefined) await client.fixes(uri, marked);
  await client.close(uri);
  if (performance.now() >= next) {
    samples.push(client.memory());
    next = performance.now() + 2000;
  }
}
await client.stop();
rmSync(folder, { recursive: true, force: true });
const quarter = Math.floor(samples.length / 4);
const [second, last] = [samples.slice(quarter, 2 * quarter), samples.slice(3 * quarter)].map(
  (part) => spreadOf(part).median,
);
const ratio = Number(last) / Number(second);
console.log(
  `${minutes} minutes, ${stories} stories, ${edits} edits: memory ${second?.toFixed(0)} MB in the second quarter, ${last?.toFixed(0)} MB in the last, ${ratio.toFixed(3)} of it; most ${Math.max(...samples).toFixed(0)} MB`,
);
if (!(ratio <= 1.1)) process.exitCode = 1;
