import type { Budget, Path } from './best-path.ts';
import type { GraphNode } from './word-graph.ts';

/** What trying all ways came to. */
export interface LongestPath {
  readonly path: Path | undefined;
  /** True when every way was tried, or one of the wanted length was found. */
  readonly isCertain: boolean;
}

/** Tries way after way, deepest first, until one has the wanted length, all were tried, or the budget is spent. */
export function longestPath(
  nodes: readonly GraphNode[],
  { starts, length }: { readonly starts: readonly number[]; readonly length: number },
  budget: Budget,
): LongestPath {
  let longest: Path | undefined;
  const isOnWay = new Uint8Array(nodes.length);
  /** False when the search is over. */
  const follow = (way: Path): boolean => {
    if (way.length > (longest?.length ?? 0)) longest = way;
    if (way.length >= length) return false;
    isOnWay[way.node] = 1;
    for (const { to, step } of nodes[way.node]?.links ?? []) {
      if (isOnWay[to] === 1) continue;
      if (!budget.spend()) return false;
      if (!follow({ node: to, length: way.length + 1, score: 0, step, before: way })) return false;
    }
    isOnWay[way.node] = 0;
    return true;
  };
  const isOver = !starts.every((node) => follow({ node, length: 1, score: 0 }));
  return { path: longest, isCertain: !isOver || (longest?.length ?? 0) >= length };
}

/** How many words can be reached from the best of some starts, itself among them: no chain from there is longer. */
export function reach(nodes: readonly GraphNode[], starts: readonly number[]): number {
  const seen = new Uint8Array(nodes.length);
  let most = 0;
  for (const start of starts) {
    if (seen[start] === 1) continue;
    const waiting = [start];
    seen[start] = 1;
    let count = 0;
    for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
      count++;
      for (const { to } of nodes[node]?.links ?? []) {
        if (seen[to] === 1) continue;
        seen[to] = 1;
        waiting.push(to);
      }
    }
    most = Math.max(most, count);
  }
  return most;
}
