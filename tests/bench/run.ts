import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { type CompletionFigures, completionRows, measureCompletions } from './completions.ts';
import { makeEdits } from './edits.ts';
import { bundleEmptyServer } from './empty-server-bundle.ts';
import { LanguageClient } from './language-client.ts';
import { type Spread, spreadOf } from './measures.ts';
import { phonicsFigures } from './phonics-figures.ts';
import { type FixFigures, fixRows, measureFixes } from './quick-fixes.ts';
import { measureSeries } from './series-work.ts';
import { storyOf } from './stories.ts';
import { measureWordWork } from './word-work.ts';

/**
 * `npm run bench`: how quick the language server is, beside an empty server of the same library in the same run. Ratios
 * come first: they hold when the machine is slow or busy. Exit code 1 when a limit of this file is broken.
 */
const root = fileURLToPath(new URL('../..', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'battledore-bench-'));
const folderUri = pathToFileURL(folder).href;
const starts = 7;
const edits = 200;

writeFileSync(join(folder, 'sequence.yaml'), readFileSync(join(root, 'samples/sequence.yaml')));
const emptyServer = await bundleEmptyServer(folder);
const server = join(root, 'server/dist/node.js');

interface Measured {
  readonly start: Spread;
  readonly edit: Spread;
  readonly memory: number;
  readonly diagnostics: number;
  /** Absent for the empty server. */
  readonly fixes?: FixFigures;
  readonly completions?: CompletionFigures;
}

async function measure(path: string, words: number, startCount: number): Promise<Measured> {
  const text = storyOf(words, '14', 1);
  const uri = `${folderUri}/story-${words}.md`;
  const startTimes: number[] = [];
  for (let run = 0; run < startCount; run++) {
    const start = performance.now();
    const client = new LanguageClient(path);
    await client.initialize(folderUri);
    await client.open(uri, text);
    startTimes.push(performance.now() - start);
    await client.stop();
  }
  const client = new LanguageClient(path);
  await client.initialize(folderUri);
  await client.open(uri, text);
  const { times, diagnostics } = await makeEdits(client, uri, text, edits);
  const memory = client.memory();
  const measured = { start: spreadOf(startTimes), edit: spreadOf(times), memory, diagnostics };
  const help =
    path === server
      ? {
          fixes: await measureFixes(client, uri),
          completions: await measureCompletions(client, uri, text),
        }
      : {};
  await client.stop();
  return { ...measured, ...help };
}

const rows: string[] = [...(await phonicsFigures())];
const broken: string[] = [];
for (const words of [300, 20_000]) {
  const ours = await measure(server, words, words === 300 ? starts : 1);
  process.env.BENCH_DIAGNOSTICS = String(ours.diagnostics);
  const empty = await measure(emptyServer, words, words === 300 ? starts : 1);
  rows.push(
    row(words, 'start to first diagnostics', 'ms', ours.start.median, empty.start.median),
    row(words, 'edit to diagnostics, median', 'ms', ours.edit.median, empty.edit.median),
    row(words, 'edit to diagnostics, p95', 'ms', ours.edit.p95, empty.edit.p95),
    row(words, 'edit to diagnostics, longest', 'ms', ours.edit.most, empty.edit.most),
    row(words, 'memory after 200 edits', 'MB', ours.memory, empty.memory),
    ...(ours.fixes === undefined ? [] : fixRows(words, ours.fixes)),
    ...(ours.completions === undefined ? [] : completionRows(words, ours.completions)),
    `${String(words).padStart(6)} words  diagnostics sent                ${ours.diagnostics}`,
  );
  if (words === 300) {
    limit('start to first diagnostics of 300 words, ms', ours.start.median, 400);
    limit('edit to diagnostics of 300 words, median ms', ours.edit.median, 20);
    limit('memory of the server, MB', ours.memory, 120);
    limit('quick fixes of a mark in 300 words, the first, ms', ours.fixes?.first ?? Number.NaN, 30);
    limit('quick fixes of a mark in 300 words, longest ms', ours.fixes?.each.most ?? Number.NaN, 30);
    limit('completion in 300 words, the first, ms', ours.completions?.first ?? Number.NaN, 30);
    limit('completion in 300 words, longest ms', ours.completions?.each.most ?? Number.NaN, 30);
  }
}
for (const { figure, spread, limit: most } of await measureWordWork()) {
  rows.push(
    `${figure.padEnd(44)} median ${spread.median.toFixed(1).padStart(6)} ms, longest ${spread.most.toFixed(1).padStart(6)} ms`,
  );
  if (most !== undefined) limit(`${figure}, longest ms`, spread.most, most);
}
const [few, many] = [
  await measureSeries(server, join(folder, 'few'), { stories: 100, starts: 3, changes: 10 }),
  await measureSeries(server, join(folder, 'many'), { stories: 1000, starts: 3, changes: 10 }),
];
for (const { stories, cold, oneStory, firstLesson, middleLesson, memory } of [few, many]) {
  rows.push(
    `${stories} stories of 150 words, none open: start to all judged, median ${cold.median.toFixed(0)} ms; one changed, longest ${oneStory.most.toFixed(0)} ms; first lesson changed, longest ${firstLesson.most.toFixed(0)} ms; lesson 24, longest ${middleLesson.most.toFixed(0)} ms; memory at most ${memory.toFixed(0)} MB`,
  );
}
limit('start to 1,000 stories judged, ms', many.cold.median, 3000);
limit('one story of 1,000 changed, median ms', many.oneStory.median, 50);
limit('the first lesson of 1,000 stories changed, longest ms', many.firstLesson.most, 1000);
limit('memory with 1,000 stories, MB', many.memory, 250);
limit('time a story of 1,000 beside a story of 100', many.cold.median / 10 / few.cold.median, 1.2);
rmSync(folder, { recursive: true, force: true });
console.log(rows.join('\n'));
console.log(broken.length === 0 ? 'Every limit is kept.' : broken.join('\n'));
process.exitCode = broken.length === 0 ? 0 : 1;

function row(words: number, figure: string, unit: string, ours: number, empty: number): string {
  return `${String(words).padStart(6)} words  ${figure.padEnd(30)} ${(ours / empty).toFixed(2).padStart(6)} of the empty server  (${ours.toFixed(1)} ${unit}, empty ${empty.toFixed(1)} ${unit})`;
}

function limit(figure: string, value: number, most: number): void {
  if (!(value <= most)) broken.push(`LIMIT BROKEN: ${figure} is ${value.toFixed(1)}, at most ${most}.`);
}
