import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { smallPng } from '../support/small-png.ts';

/**
 * How long `battledore print` takes, from the start of the program to the whole file, and how much memory it needs at
 * most: a story of 12 pages, and collections of 10 and 40 of them, each page with a picture of its own. Exit code 1
 * when a limit of this file is broken.
 */
const root = fileURLToPath(new URL('../..', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'battledore-print-bench-'));
const pagesOfStory = 12;
const broken: string[] = [];

writeFileSync(join(folder, 'sequence.yaml'), readFileSync(join(root, 'samples/sequence.yaml')));
const watch = join(folder, 'watch.cjs');
writeFileSync(
  watch,
  'process.on("exit", () => process.stderr.write("MOST " + process.resourceUsage().maxRSS));',
);
for (const count of [1, 10, 40]) writeStories(join(folder, `of-${count}`), count);

report(['of-1', '--out', 'one.pdf'], 'a story of 12 pages', 1000);
report(['of-10', '--out', 'ten.pdf'], 'a collection of 10 stories');
report(['of-40', '--out', 'forty.pdf'], 'a collection of 40 stories', 15_000);
report(['of-10', '--out', 'ten'], '10 stories, a file each');
report(['of-40', '--out', 'forty'], '40 stories, a file each');
report(['of-1', '--teacher', '--out', 'teacher.pdf'], 'a teacher’s copy', 3000);

rmSync(folder, { recursive: true, force: true });
console.log(broken.length === 0 ? 'Every limit is kept.' : broken.join('\n'));
process.exitCode = broken.length === 0 ? 0 : 1;

function writeStories(place: string, count: number): void {
  mkdirSync(place);
  for (let story = 0; story < count; story++) {
    const pages = Array.from({ length: pagesOfStory }, (_, page) => {
      const name = `${story}-${page}.png`;
      // A little noise keeps the pictures from being smaller than scanned drawings are.
      const sample = (x: number, y: number, channel: number) =>
        (x * (page + 3) + y * (story + 5) * (x & 7) + channel * 80) & 255;
      writeFileSync(join(place, name), smallPng({ width: 480, height: 320, sample }));
      return `![A picture](${name})\nThe tin man sat on the cot.\nNod can tip the pan!`;
    });
    writeFileSync(
      join(place, `${story}.md`),
      `---\ntitle: Story ${story}\nlesson: "4"\n---\n${pages.join('\n\n---\n\n')}\n`,
    );
  }
}

function report(given: readonly string[], what: string, most?: number): void {
  const start = performance.now();
  const { status, stderr } = spawnSync(
    process.execPath,
    ['--require', watch, join(root, 'server/dist/cli.js'), 'print', ...given],
    { cwd: folder, encoding: 'utf8' },
  );
  const time = performance.now() - start;
  const memory = Number(/MOST (\d+)/.exec(stderr)?.[1]) / 1024;
  if (status !== 0) throw new Error(stderr);
  console.log(
    `${what.padEnd(30)} ${time.toFixed(0).padStart(6)} ms ${memory.toFixed(0).padStart(6)} MB at most`,
  );
  if (most !== undefined && time > most) {
    broken.push(`LIMIT BROKEN: ${what} took ${time.toFixed(0)} ms, at most ${most}.`);
  }
}
