import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { LatestRun } from '../../../client/src/preview/latest-run.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

/** A run whose task takes 100 ms and notes the state it saw and how many ran at once. */
function bench() {
  const seen: number[] = [];
  const desk = { state: 0, running: 0, most: 0 };
  const run = new LatestRun(async () => {
    seen.push(desk.state);
    desk.most = Math.max(desk.most, ++desk.running);
    await new Promise((resolve) => setTimeout(resolve, 100));
    desk.running--;
  }, 250);
  return { desk, seen, run };
}

test('typing without a stop: at most one run at a time, one a pause, and the last state is seen', async () => {
  const { desk, seen, run } = bench();
  for (let key = 1; key <= 100; key++) {
    desk.state = key;
    run.ask();
    await vi.advanceTimersByTimeAsync(20);
  }
  await vi.advanceTimersByTimeAsync(1000);
  expect(desk.most).toBe(1);
  expect(seen.at(-1)).toBe(100);
  // Two seconds of typing; a run and the pause before it take 350 ms.
  expect(seen.length).toBeGreaterThanOrEqual(5);
  expect(seen.length).toBeLessThanOrEqual(7);
});

test('what changes while it runs leads to one more run', async () => {
  const { desk, seen, run } = bench();
  run.askNow();
  desk.state = 1;
  for (let time = 0; time < 5; time++) run.ask();
  await vi.advanceTimersByTimeAsync(2000);
  expect(seen).toEqual([0, 1]);
});

test('nothing runs after it is disposed of', async () => {
  const { seen, run } = bench();
  run.ask();
  run.dispose();
  run.ask();
  run.askNow();
  await vi.advanceTimersByTimeAsync(2000);
  expect(seen).toEqual([]);
});
