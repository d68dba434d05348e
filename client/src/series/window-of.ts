/** The first and the last of a row of things that are in sight. */
export interface Seen {
  readonly first: number;
  readonly last: number;
}

/** Which of `count` things of one size are in sight, with some to spare at both ends. */
export function evenlySeen(from: number, length: number, size: number, count: number, spare: number): Seen {
  return {
    first: Math.max(0, Math.floor(from / size) - spare),
    last: Math.min(count - 1, Math.ceil((from + length) / size) + spare),
  };
}

/** Where each thing begins, and at the end where the last one ends. */
export function edgesOf(sizes: readonly number[]): readonly number[] {
  const edges = [0];
  for (const size of sizes) edges.push((edges.at(-1) ?? 0) + size);
  return edges;
}

/** Which things of sizes of their own are in sight, with some to spare at both ends. */
export function seenBetween(edges: readonly number[], from: number, length: number, spare: number): Seen {
  const count = edges.length - 1;
  let first = 0;
  while (first < count - 1 && (edges[first + 1] ?? 0) <= from) first++;
  let last = first;
  while (last < count - 1 && (edges[last + 1] ?? 0) < from + length) last++;
  return { first: Math.max(0, first - spare), last: Math.min(count - 1, last + spare) };
}

/** True when what is in sight lies within what is drawn. */
export function isWithin(seen: Seen, drawn: Seen): boolean {
  return seen.first >= drawn.first && seen.last <= drawn.last;
}
