/** A row of figures, in milliseconds or megabytes. */
export interface Spread {
  readonly median: number;
  readonly p95: number;
  readonly most: number;
}

/** Median, 95th percentile and greatest of some figures. */
export function spreadOf(figures: readonly number[]): Spread {
  const sorted = [...figures].sort((left, right) => left - right);
  const at = (share: number): number =>
    sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN;
  return { median: at(0.5), p95: at(0.95), most: at(1) };
}

/** How long a task takes, in milliseconds. */
export async function timed(task: () => unknown): Promise<number> {
  const start = performance.now();
  await task();
  return performance.now() - start;
}
