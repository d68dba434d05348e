import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import { loadPhonics } from '../../server/src/load-phonics.ts';
import { reviewStory } from '../../server/src/review/review-story.ts';
import { readSequence } from '../../server/src/sequence/read-sequence.ts';
import { teachingOf } from '../../server/src/sequence/teaching.ts';
import { readStory } from '../../server/src/story/read-story.ts';
import { makeEdits } from './edits.ts';
import { bundleEmptyServer } from './empty-server-bundle.ts';
import { LanguageClient } from './language-client.ts';
import { type Spread, spreadOf, timed } from './measures.ts';
import { storyOf } from './stories.ts';

/**
 * The server beside others in one run: an empty server of the same library that sends as many diagnostics, and, where their
 * packages are installed (`npm ci --prefix tests/bench/peers`), general-purpose checkers over the same protocol and the same
 * edits. With `--write` the table goes into `server/docs/speed.md`.
 */
const root = fileURLToPath(new URL('../..', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'battledore-speed-'));
const folderUri = pathToFileURL(folder).href;
writeFileSync(join(folder, 'sequence.yaml'), readFileSync(join(root, 'samples/sequence.yaml')));

interface Runner {
  readonly name: string;
  readonly server: string;
  /** Edits of the long text; the slow ones would take minutes over two hundred. */
  readonly longEdits: number;
}

const emptyServer = await bundleEmptyServer(folder);
const peersAreThere = existsSync(join(root, 'tests/bench/peers/node_modules'));
const runners: readonly Runner[] = [
  { name: 'Battledore', server: join(root, 'server/dist/node.js'), longEdits: 200 },
  { name: 'empty server', server: emptyServer, longEdits: 200 },
  ...(peersAreThere
    ? ['markdown-service', 'markdown-linter', 'spell-checker'].map((name) => ({
        name: name.replace('-', ' '),
        server: join(root, `tests/bench/peers/${name}.mjs`),
        longEdits: 20,
      }))
    : []),
];

interface EditFigures {
  readonly spread: Spread;
  readonly memory: number;
  /** Milliseconds of processor time an edit. */
  readonly processor: number;
  readonly diagnostics: number;
}

interface Figures {
  readonly start: Spread;
  readonly short: EditFigures;
  readonly long: EditFigures;
  /** Not measured of those that find the same in every text. */
  readonly hard?: EditFigures;
  readonly stories: number;
}

/** At this lesson of the samples 7 of a hundred words of the generated texts are marked: a draft that still falls short. */
const draftLesson = '30';
/** At this one 37 of a hundred. */
const hardLesson = '14';
/** The two whose time depends on how much is marked. */
const comparesHard: ReadonlySet<string> = new Set(['Battledore', 'empty server']);
const shortText = storyOf(300, draftLesson, 1);
const longText = storyOf(20_000, draftLesson, 1);
const hardText = storyOf(20_000, hardLesson, 1);
const starts = new Map<string, number[]>();
const sent = { short: await countDiagnostics(shortText), long: 0, hard: 0 };
for (let round = 0; round < 9; round++) {
  for (const { name, server } of runners) {
    process.env.BENCH_DIAGNOSTICS = String(sent.short);
    const start = performance.now();
    const client = await opened(server);
    await client.open(`${folderUri}/start.md`, shortText);
    starts.set(name, [...(starts.get(name) ?? []), performance.now() - start]);
    await client.stop();
  }
}
const figures = new Map<string, Figures>();
for (const { name, server, longEdits } of runners) {
  process.env.BENCH_DIAGNOSTICS = String(sent.short);
  const short = await edits(server, 'short', shortText, 200);
  process.env.BENCH_DIAGNOSTICS = String(sent.long);
  const long = await edits(server, 'long', longText, longEdits);
  if (name === 'Battledore') sent.long = long.diagnostics;
  process.env.BENCH_DIAGNOSTICS = String(sent.hard);
  const hard = comparesHard.has(name) ? await edits(server, 'hard', hardText, longEdits) : undefined;
  if (name === 'Battledore') sent.hard = hard?.diagnostics ?? 0;
  process.env.BENCH_DIAGNOSTICS = String(sent.short);
  const stories = await manyStories(server);
  figures.set(name, { start: spreadOf(starts.get(name) ?? []), short, long, ...(hard && { hard }), stories });
}
const inProcess = await measureInProcess();
rmSync(folder, { recursive: true, force: true });

const ours = figures.get('Battledore');
const empty = figures.get('empty server');
if (ours?.hard === undefined || empty?.hard === undefined) throw new Error('Nothing was measured.');
const targets = [
  target(
    'start to first diagnostics, 300 words',
    ours.start.median,
    1.6 * empty.start.median,
    `1.6 of the empty server`,
  ),
  target(
    'edit to diagnostics, p95, 300 words',
    ours.short.spread.p95,
    empty.short.spread.p95 + 1,
    'the empty server + 1 ms',
  ),
  target(
    'edit to diagnostics, p95, 20,000 words',
    ours.long.spread.p95,
    2 * empty.long.spread.p95,
    '2 of the empty server',
  ),
  target(
    'the same where every third word is marked',
    ours.hard.spread.p95,
    2 * empty.hard.spread.p95,
    '2 of the empty server',
  ),
  target('300 stories of 300 words through the protocol', ours.stories, 200, '200 ms'),
  target('the same in process', inProcess.review, 1.2 * inProcess.parse, '1.2 of remark-parse alone'),
  target(
    'memory after 200 edits, 300 words',
    ours.short.memory,
    empty.short.memory + 20,
    'the empty server + 20 MB',
    'MB',
  ),
  target(
    'memory after 200 edits, 20,000 words',
    ours.long.memory,
    empty.long.memory + 55,
    'the empty server + 55 MB',
    'MB',
  ),
];
const growth = ours.long.spread.median / ours.short.spread.median;
const table = report();
console.log(table);
if (process.argv.includes('--write')) write(table);
// The gate: what an edit costs may grow with the diagnostics that are sent, by far less than the text has grown.
if (!(growth <= (20_000 / 300) * 0.3)) {
  console.log(`LIMIT BROKEN: an edit of 20,000 words takes ${growth.toFixed(1)} times that of 300.`);
  process.exitCode = 1;
}

async function opened(server: string): Promise<LanguageClient> {
  const client = new LanguageClient(server);
  await client.initialize(folderUri);
  return client;
}

/** How many diagnostics our server sends for a text. */
async function countDiagnostics(text: string): Promise<number> {
  const client = await opened(join(root, 'server/dist/node.js'));
  const count = await client.open(`${folderUri}/count.md`, text);
  await client.stop();
  return count;
}

async function edits(server: string, name: string, text: string, count: number): Promise<EditFigures> {
  const uri = `${folderUri}/${name}.md`;
  const client = await opened(server);
  await client.open(uri, text);
  const before = client.processorTime();
  const { times, diagnostics } = await makeEdits(client, uri, text, count);
  const processor = (client.processorTime() - before) / count;
  const memory = client.memory();
  await client.stop();
  return { spread: spreadOf(times), memory, processor, diagnostics };
}

/** Milliseconds for 300 stories that are opened at once until all have their diagnostics; the server runs already. */
async function manyStories(server: string): Promise<number> {
  const client = await opened(server);
  await client.open(`${folderUri}/warm.md`, shortText);
  const texts = Array.from({ length: 300 }, (_, index) => storyOf(300, draftLesson, index + 2));
  const time = await timed(() =>
    Promise.all(texts.map((text, index) => client.open(`${folderUri}/many-${index}.md`, text))),
  );
  await client.stop();
  return time;
}

/** The same stories in this process, after a round that is not counted; medians of seven rounds, taken in turn. */
async function measureInProcess() {
  const phonics = loadPhonics();
  const teaching = teachingOf(
    readSequence(readFileSync(join(root, 'samples/sequence.yaml'), 'utf8')),
    phonics,
  );
  const taught = teaching.taughtAt(draftLesson);
  if (taught === undefined) throw new Error(`The samples have no lesson ${draftLesson}.`);
  const texts = Array.from({ length: 300 }, (_, index) => storyOf(300, draftLesson, index + 2));
  const parser = unified().use(remarkParse);
  const words = new Intl.Segmenter('en', { granularity: 'word' });
  const tasks = {
    review: (text: string) => reviewStory({ story: readStory(text), taught, phonics }),
    parse: (text: string) => parser.parse(text),
    segment: (text: string) => text.split(/\n{2,}/).map((part) => [...words.segment(part)].length),
  };
  const times = { review: [] as number[], parse: [] as number[], segment: [] as number[] };
  for (let round = 0; round < 8; round++) {
    for (const name of ['review', 'parse', 'segment'] as const) {
      const time = await timed(() => texts.forEach((text) => void tasks[name](text)));
      if (round > 0) times[name].push(time);
    }
  }
  return {
    review: spreadOf(times.review).median,
    parse: spreadOf(times.parse).median,
    segment: spreadOf(times.segment).median,
  };
}

function target(figure: string, value: number, most: number, wanted: string, unit = 'ms') {
  const isMet = value <= most;
  return `| ${figure} | ${value.toFixed(1)} ${unit} | ${wanted}: ${most.toFixed(1)} ${unit} | ${isMet ? 'met' : `missed by ${(value - most).toFixed(1)} ${unit}`} |`;
}

function report(): string {
  const row = (what: string, figure: (of: Figures) => string): string =>
    `| ${what} | ${runners.map(({ name }) => figure(figures.get(name) as Figures)).join(' | ')} |`;
  const spread = ({ median, p95, most }: Spread): string =>
    [median, p95, most].map((each) => each.toFixed(1)).join(', ');
  return [
    `| figure | Battledore | target | |`,
    '|---|---|---|---|',
    ...targets,
    '',
    `| figure | ${runners.map(({ name }) => name).join(' | ')} |`,
    `|---|${'---|'.repeat(runners.length)}`,
    row('start to first diagnostics, 300 words, median of 9, ms', ({ start }) => start.median.toFixed(0)),
    row('edit to diagnostics, 300 words: median, p95, longest, ms', ({ short }) => spread(short.spread)),
    row('edit to diagnostics, 20,000 words: median, p95, longest, ms', ({ long }) => spread(long.spread)),
    row('the same where every third word is marked', ({ hard }) => (hard ? spread(hard.spread) : '')),
    row('processor time an edit, 300 words, ms', ({ short }) => short.processor.toFixed(1)),
    row('processor time an edit, 20,000 words, ms', ({ long }) => long.processor.toFixed(1)),
    row(
      'memory after the edits, 300 / 20,000 words, MB',
      ({ short, long }) => `${short.memory.toFixed(0)} / ${long.memory.toFixed(0)}`,
    ),
    row('300 stories of 300 words through the protocol, ms', ({ stories }) => stories.toFixed(0)),
    row(
      'diagnostics sent, 300 / 20,000 words',
      ({ short, long, hard }) =>
        `${short.diagnostics} / ${long.diagnostics}${hard ? `, hard ${hard.diagnostics}` : ''}`,
    ),
    '',
    `In process, 300 stories of 300 words: reading and review ${inProcess.review.toFixed(0)} ms, remark-parse alone ${inProcess.parse.toFixed(0)} ms, word segmentation by paragraph alone ${inProcess.segment.toFixed(0)} ms.`,
    `An edit of 20,000 words takes ${growth.toFixed(1)} times that of 300 words; the text is ${(20_000 / 300).toFixed(0)} times as long, and so is what is sent.`,
    `Node ${process.version}, ${cpus().length} processors. ${peersAreThere ? 'The peers have 20 edits of the long text, the others 200.' : 'Peers are not installed: npm ci --prefix tests/bench/peers.'}`,
  ].join('\n');
}

function write(text: string): void {
  const path = join(root, 'server/docs/speed.md');
  const page = readFileSync(path, 'utf8');
  const [begin, end] = ['<!-- measured -->\n', '<!-- end -->'];
  const [before = ''] = page.split(begin);
  const after = page.slice(page.indexOf(end));
  const day = new Date().toISOString().slice(0, 10);
  writeFileSync(
    path,
    `${before}${begin}Measured on ${day} by \`npx tsx tests/bench/speed.ts --write\`.\n\n${text}\n${after}`,
  );
}
