import type { AlignedPart } from './align.ts';
import type { Correspondence } from './inventory.ts';
import { isVowel } from './phoneme.ts';

/**
 * The reading that the inventory alone finds cheapest for letters: every stretch of letters its most regular sound.
 * It reads anything, but knows nothing of its neighbours.
 */
export function createCheapestReading(
  inventory: readonly Correspondence[],
): (letters: string) => readonly AlignedPart[] {
  const best = new Map<string, Correspondence>();
  for (const row of inventory) {
    if (row.letters.includes('_')) continue;
    const known = best.get(row.letters);
    if (!known || row.cost < known.cost) best.set(row.letters, row);
  }
  return (letters) => {
    const costs = [0];
    const steps: { row: Correspondence; from: number }[] = [];
    for (let end = 1; end <= letters.length; end++) {
      costs[end] = Number.POSITIVE_INFINITY;
      for (let start = Math.max(0, end - 5); start < end; start++) {
        const row = best.get(letters.slice(start, end));
        const cost = (costs[start] ?? 0) + (row ? row.cost : Number.POSITIVE_INFINITY);
        if (row && cost < (costs[end] ?? 0)) {
          costs[end] = cost;
          steps[end] = { row, from: start };
        }
      }
    }
    const parts: AlignedPart[] = [];
    for (let end = letters.length; end > 0; ) {
      const step = steps[end];
      if (!step) break;
      const { letters: text, sounds } = step.row;
      parts.unshift(sounds.some(isVowel) ? { letters: text, sounds, stress: 1 } : { letters: text, sounds });
      end = step.from;
    }
    return parts;
  };
}
