import type { Ngram, NgramModel } from './n-gram.ts';

/** What a compact model keeps. */
export interface CompactOptions {
  /** The longest n-grams of the model. */
  readonly order: number;
  /** An n-gram stays when its occurrences times its gain (natural logarithms) reach this, or when a longer one needs it. */
  readonly leastGain: number;
}

interface Node {
  readonly token: number;
  readonly logProbability: number;
  logBackOff: number;
  readonly children: Map<number, Node>;
}

/**
 * The model as bytes for `server/src/phonics/joint-ngrams.ts`: n-grams that change little are left out (weighted difference,
 * Seymore and Rosenfeld 1996), the weights for backing off are computed anew, and logarithms are kept in steps of 1/16.
 * `names` describe the tokens, one line each; the model's `end` is written as the number after the last of them.
 */
export function encodeCompactModel(
  model: NgramModel,
  names: readonly string[],
  { order, leastGain }: CompactOptions,
): Uint8Array {
  const root = keptTree(model, leastGain);
  weigh(root);
  const text = names.join('\n');
  const header = `battledore letter-to-sound 1\n${text.length}\n${text}\n${order}\n`;
  const levels = levelsOf(root, order);
  const sizes = levels.map((level) => level.length).join(' ');
  const planes = levels.flatMap((level, depth) => {
    const longest = depth === order - 1;
    const tokens = level.map((node) => node.token);
    const children = level.map((node) => node.children.size);
    return [
      tokens.map(low),
      tokens.map(high),
      level.map((node) => stepOf(-node.logProbability)),
      ...(longest
        ? []
        : [level.map((node) => stepOf(node.logBackOff + 8)), children.map(low), children.map(high)]),
    ];
  });
  const head = Array.from(`${header}${sizes}\n`, (character) => character.charCodeAt(0));
  return Uint8Array.from([head, ...planes].flat());
}

function keptTree(model: NgramModel, leastGain: number): Node {
  const all: (Ngram | undefined)[] = [undefined, ...model.ngrams()];
  const isKept = new Uint8Array(all.length);
  // A context comes before what extends it, so going backwards sees the longer ones first.
  for (let at = all.length - 1; at > 0; at--) {
    const ngram = all[at] as Ngram;
    const isSingle = ngram.context === 0;
    if (isKept[at] === 0 && !isSingle && ngram.occurrences * ngram.gain < leastGain) continue;
    isKept[at] = 1;
    isKept[ngram.context] = 1;
  }
  const root: Node = { token: -1, logProbability: 0, logBackOff: 0, children: new Map() };
  const nodes = new Map<number, Node>([[0, root]]);
  for (const ngram of all) {
    if (ngram === undefined || isKept[ngram.node] === 0) continue;
    const { token, logProbability } = ngram;
    const node: Node = { token, logProbability, logBackOff: 0, children: new Map() };
    nodes.set(ngram.node, node);
    nodes.get(ngram.context)?.children.set(token, node);
  }
  return root;
}

/** Sets each context's weight so that its own tokens and those it leaves to shorter contexts add up to one. */
function weigh(root: Node): void {
  const visit = (node: Node, path: readonly number[], depth: number): void => {
    if (path.length === depth) {
      if (node.children.size === 0) return;
      let [own, shorter] = [0, 0];
      for (const child of node.children.values()) {
        own += Math.exp(child.logProbability);
        shorter += Math.exp(logProbabilityOf(root, path.slice(1), child.token));
      }
      node.logBackOff = Math.log(Math.max(1e-4, 1 - own) / Math.max(1e-4, 1 - shorter));
      return;
    }
    for (const child of node.children.values()) visit(child, [...path, child.token], depth);
  };
  // Shorter contexts first: the longer ones lean on their weights.
  for (let depth = 1; depth < 12; depth++) visit(root, [], depth);
}

function logProbabilityOf(root: Node, context: readonly number[], token: number): number {
  let total = 0;
  for (let from = 0; from <= context.length; from++) {
    let node: Node | undefined = root;
    for (let at = from; at < context.length && node; at++) node = node.children.get(context[at] as number);
    if (!node) continue;
    const child = node.children.get(token);
    if (child) return total + child.logProbability;
    total += node.logBackOff;
  }
  return -16;
}

/** The nodes of each depth; children lie together, in the order of their parents and then of their tokens. */
function levelsOf(root: Node, order: number): Node[][] {
  const levels: Node[][] = [];
  let level = [root];
  for (let depth = 0; depth < order; depth++) {
    level = level.flatMap((node) => [...node.children.values()].sort((a, b) => a.token - b.token));
    levels.push(level);
  }
  return levels;
}

function stepOf(value: number): number {
  return Math.max(0, Math.min(255, Math.round(value * 16)));
}

function low(value: number): number {
  return value & 0xff;
}

function high(value: number): number {
  return value >> 8;
}
