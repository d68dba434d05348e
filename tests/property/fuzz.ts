/**
 * `npm run fuzz`: edit scripts in one process, on all processors, or days of traffic before a server's process.
 *
 *     npm run fuzz -- --scripts 1000000     so many scripts (usual: 100,000)
 *     npm run fuzz -- --minutes 60          days of traffic for so long, after a build
 *     npm run fuzz -- --day 7               one day of traffic again
 *     npm run fuzz -- --seed 7              from this seed; without it one is drawn and printed
 *
 * Exit code 1 with the smallest script, or the day, that fails, as soon as one does.
 */
import { fork } from 'node:child_process';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import fc from 'fast-check';
import { randomSeed } from '../protocol/random-seed.ts';
import { passDay } from '../protocol/traffic.ts';
import { packagePhonics } from '../support/package-phonics.ts';
import { editScript, playScript } from './edit-scripts.ts';

/** Scripts between two signs of life. */
const batch = 1000;

const { values } = parseArgs({
  options: {
    minutes: { type: 'string' },
    day: { type: 'string' },
    scripts: { type: 'string', default: '100000' },
    seed: { type: 'string', default: String(randomSeed()) },
  },
});
const scripts = Number(values.scripts);
const seed = Number(values.seed);
if (!Number.isInteger(scripts) || scripts < 1 || !Number.isInteger(seed)) {
  console.error('--scripts and --seed want whole numbers.');
  process.exitCode = 2;
} else if (values.day !== undefined || values.minutes !== undefined) {
  process.exitCode = (await passDays()) ? 0 : 1;
} else if (process.send === undefined) {
  await share();
} else {
  await play();
}

/** @returns true when all went well. */
async function passDays(): Promise<boolean> {
  const first = Number(values.day ?? seed);
  const end = performance.now() + Number(values.minutes ?? 0) * 60_000;
  for (let day = first; day === first || performance.now() < end; day++) {
    const { messages, compared, faults, slowest } = await passDay(day);
    const time = `slowest ${slowest.method} ${slowest.milliseconds.toFixed(0)} ms`;
    console.log(`day ${day}: ${messages} messages, ${compared} documents compared, ${time}`);
    for (const fault of faults) console.log(fault);
    if (faults.length > 0) return false;
  }
  return true;
}

/** Gives each processor its part and counts what comes back. */
async function share(): Promise<void> {
  const hands = Math.min(availableParallelism(), Math.ceil(scripts / batch));
  const start = performance.now();
  let played = 0;
  console.log(`${scripts} scripts on ${hands} processors, seed ${seed}`);
  const children = Array.from({ length: hands }, (_, hand) => {
    const part = Math.floor(scripts / hands) + (hand < scripts % hands ? 1 : 0);
    return fork(fileURLToPath(import.meta.url), [
      ...['--scripts', String(part)],
      // Each batch of each processor has a seed of its own.
      ...['--seed', String(seed + hand * Math.ceil(scripts / batch))],
    ]);
  });
  const codes = await Promise.all(
    children.map(
      (child) =>
        new Promise<number>((resolve) => {
          child.on('message', (count: number) => {
            played += count;
            const seconds = (performance.now() - start) / 1000;
            if (played % (50 * batch) < batch) console.log(`${played} played in ${seconds.toFixed(0)} s`);
          });
          child.on('exit', (code) => {
            if (code !== 0) for (const other of children) other.kill();
            resolve(code ?? 1);
          });
        }),
    ),
  );
  const isWell = codes.every((code) => code === 0);
  console.log(isWell ? `All ${played} scripts agree.` : 'A script fails; see above.');
  process.exitCode = isWell ? 0 : 1;
}

async function play(): Promise<void> {
  for (let played = 0; played < scripts; played += batch) {
    const numRuns = Math.min(batch, scripts - played);
    await fc.assert(
      fc.asyncProperty(editScript, (script) => playScript(script, packagePhonics)),
      { numRuns, seed: seed + played / batch },
    );
    process.send?.(numRuns);
  }
  process.disconnect();
}
