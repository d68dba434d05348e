import type { ChainStep } from './chain.ts';
import { randomNumbers } from './random.ts';
import type { GraphLink, GraphNode } from './word-graph.ts';

/** A way through the graph. */
export interface Path {
  readonly node: number;
  readonly length: number;
  readonly score: number;
  readonly step?: ChainStep;
  readonly before?: Path;
}

/** What way is wanted. */
export interface PathWish {
  readonly length: number;
  /** Where it may begin. */
  readonly starts: readonly number[];
  readonly seed: number;
  /** How many ways are kept at each length. */
  readonly width: number;
}

/** Counts the steps a search has taken; a search ends when its budget is spent. */
export interface Budget {
  /** Takes one step; false when none is left. */
  spend(): boolean;
}

/**
 * The best way of the wanted length that keeping the `width` best at each length finds, else the best of the longest. Good
 * ways use useful words and new spellings, and change now the start, now the middle, now the end.
 */
export function bestPath(nodes: readonly GraphNode[], wish: PathWish, budget: Budget): Path | undefined {
  const random = randomNumbers(wish.seed);
  const worth = nodes.map(({ found }, place) => worthOf(found, place, nodes.length) + random() * chance);
  const startWorth = (node: number): number => (worth[node] ?? 0) + random() * chance;
  let ways: readonly Path[] = wish.starts
    .filter((node) => wish.starts.length === 1 || (nodes[node]?.links.length ?? 0) > 0)
    .map((node) => ({ node, length: 1, score: startWorth(node) }))
    .sort(byScore)
    .slice(0, wish.width);
  let longest = ways[0];
  while (ways.length > 0 && (longest?.length ?? 0) < wish.length) {
    const next: Path[] = [];
    for (const way of ways) {
      for (const link of nodes[way.node]?.links ?? []) {
        if (!budget.spend()) return longest;
        if (passes(way, link.to)) continue;
        next.push({
          node: link.to,
          length: way.length + 1,
          score: way.score + (worth[link.to] ?? 0) - sameness(way, link),
          step: link.step,
          before: way,
        });
      }
    }
    next.sort(byScore);
    ways = fewPerEnd(next, wish.width);
    longest = ways[0] ?? longest;
  }
  return longest;
}

/** True when the way has been at the node. */
export function passes(way: Path, node: number): boolean {
  for (let each: Path | undefined = way; each !== undefined; each = each.before) {
    if (each.node === node) return true;
  }
  return false;
}

/** How much of a score is left to the seed; the rest is what a word is worth, about 0 to 3. */
const chance = 0.9;

function worthOf({ newSpellings, listed }: GraphNode['found'], place: number, count: number): number {
  return 1 - place / count + (newSpellings.length > 0 ? 1.6 : 0) + (listed.isFamiliar ? 0.5 : 0);
}

/** What a step costs that changes where the last ones did, or takes back or adds on to what was just done. */
function sameness(way: Path, { step }: GraphLink): number {
  let cost = 0;
  const last = way.step;
  if (last?.place === step.place) cost += 0.9;
  if (last?.place === step.place && way.before?.step?.place === step.place) cost += 1.2;
  if (last !== undefined && last.kind !== 'change' && step.kind !== 'change') cost += 0.5;
  // The same grapheme again soon (s to t, then something, then s to t) is dull.
  for (let each = way, back = 0; each.step !== undefined && each.before !== undefined && back < 4; back++) {
    if (each.step.from === step.from && each.step.to === step.to) cost += 0.6;
    each = each.before;
  }
  return cost;
}

function byScore(left: Path, right: Path): number {
  return right.score - left.score || left.node - right.node;
}

/** Of ways that end in one word only the three best, so that the kept ones stay different. */
function fewPerEnd(ways: readonly Path[], width: number): readonly Path[] {
  const counts = new Map<number, number>();
  const kept: Path[] = [];
  for (const way of ways) {
    const count = counts.get(way.node) ?? 0;
    if (count < 3) {
      counts.set(way.node, count + 1);
      kept.push(way);
      if (kept.length === width) break;
    }
  }
  return kept;
}
