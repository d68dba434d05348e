import { describe, expect, test } from 'vitest';
import { randomSeed } from './random-seed.ts';
import { passDay } from './traffic.ts';

/** Days are begun until so many milliseconds are over; `npm run fuzz -- --minutes` takes more. */
const time = 20_000;

describe('the server’s process', () => {
  test('lives through days of traffic, says nothing of old versions and ends the day like a fresh one', async () => {
    const seed = randomSeed();
    let days = 0;
    let compared = 0;
    for (const end = performance.now() + time; performance.now() < end; days++) {
      const day = await passDay(seed + days);
      compared += day.compared;
      expect(day.faults, `npm run fuzz -- --day ${seed + days}`).toEqual([]);
    }
    expect(compared).toBeGreaterThan(0);
    console.log(`${days} days from seed ${seed}, ${compared} documents compared`);
  }, 300_000);
});
