/**
 * An n-gram model of token sequences with interpolated modified Kneser-Ney smoothing (Chen and Goodman 1998).
 * It is a trie in typed arrays: a node is an n-gram, its children extend it by a token, its suffix drops the first token.
 */
export class NgramModel {
  /** The context before the first token of a sequence. */
  readonly start: number;
  /** The token that ends a sequence. */
  readonly end: number;
  readonly #parent: Int32Array;
  readonly #token: Int32Array;
  readonly #occurrences: Int32Array;
  readonly #slots: Int32Array;
  readonly #logProbability: Float32Array;
  readonly #logBackOff: Float32Array;
  readonly #suffix: Int32Array;
  readonly #context: Int32Array;

  constructor(sequences: readonly Int32Array[], vocabulary: number, order: number) {
    const trie = new Trie(sequences, vocabulary, order);
    const { logProbability, logBackOff, context } = smooth(trie, vocabulary, order);
    this.#parent = trie.parent;
    this.#token = trie.token;
    this.#occurrences = trie.occurrences;
    this.#slots = trie.slots;
    this.#suffix = trie.suffix;
    this.#logProbability = logProbability;
    this.#logBackOff = logBackOff;
    this.#context = context;
    this.end = vocabulary;
    const start = find(this.#parent, this.#token, this.#slots, 0, vocabulary + 1);
    this.start = Math.max(0, start);
  }

  /** How many n-grams of all orders the model holds. */
  get size(): number {
    return this.#parent.length;
  }

  /**
   * Every n-gram of the model, each after the one it extends: its own number, the number of its context (0 for none), its
   * last token, how often it occurs, and by how much it is likelier than the shorter n-gram without its first token says.
   */
  *ngrams(): Iterable<Ngram> {
    for (let node = 1; node < this.#parent.length; node++) {
      const context = this.#parent[node] as number;
      const token = this.#token[node] as number;
      const logProbability = this.#logProbability[node] as number;
      const backedOff =
        context === 0
          ? Number.NEGATIVE_INFINITY
          : (this.#logBackOff[context] as number) +
            this.logProbability(this.#suffix[context] as number, token);
      yield {
        node,
        context,
        token,
        occurrences: this.#occurrences[node] as number,
        logProbability,
        gain: logProbability - backedOff,
      };
    }
  }

  /** Natural logarithm of the probability of `token` after `context`; -Infinity for a token never seen. */
  logProbability(context: number, token: number): number {
    let total = 0;
    for (let at = context; ; at = this.#suffix[at] ?? 0) {
      const node = find(this.#parent, this.#token, this.#slots, at, token);
      if (node >= 0) return total + (this.#logProbability[node] ?? 0);
      if (at === 0) return Number.NEGATIVE_INFINITY;
      total += this.#logBackOff[at] ?? 0;
    }
  }

  /** The context after `token` was added to `context`: the longest known one. */
  next(context: number, token: number): number {
    for (let at = context; ; at = this.#suffix[at] ?? 0) {
      const node = find(this.#parent, this.#token, this.#slots, at, token);
      if (node >= 0) return this.#context[node] ?? 0;
      if (at === 0) return 0;
    }
  }
}

/** An n-gram of a model, see {@link NgramModel.ngrams}. */
export interface Ngram {
  readonly node: number;
  readonly context: number;
  readonly token: number;
  readonly occurrences: number;
  /** Natural logarithm of the last token's probability after the others. */
  readonly logProbability: number;
  /** Infinite for single tokens. */
  readonly gain: number;
}

function slotOf(parent: number, token: number, mask: number): number {
  let hash = Math.imul(parent, 0x9e3779b1) ^ Math.imul(token + 1, 0x85ebca6b);
  hash ^= hash >>> 15;
  hash = Math.imul(hash, 0x2c1b3c6d);
  return (hash ^ (hash >>> 13)) & mask;
}

function find(
  parents: Int32Array,
  tokens: Int32Array,
  slots: Int32Array,
  parent: number,
  token: number,
): number {
  const mask = slots.length - 1;
  for (let slot = slotOf(parent, token, mask); ; slot = (slot + 1) & mask) {
    const node = slots[slot] as number;
    if (node < 0 || (parents[node] === parent && tokens[node] === token)) return node;
  }
}

/** Every n-gram of the sequences up to the order, with the count that Kneser and Ney's smoothing wants for its length. */
class Trie {
  parent = new Int32Array(1 << 16);
  token = new Int32Array(1 << 16);
  depth = new Uint8Array(1 << 16);
  count = new Int32Array(1 << 16);
  slots = new Int32Array(1 << 18).fill(-1);
  suffix: Int32Array;
  /** How often each n-gram occurs, which `count` is not for the shorter ones. */
  occurrences: Int32Array;
  #size = 1;

  constructor(sequences: readonly Int32Array[], vocabulary: number, order: number) {
    const [end, begin] = [vocabulary, vocabulary + 1];
    for (const sequence of sequences) {
      const padded = Int32Array.of(begin, ...sequence, end);
      for (let from = 0; from < padded.length; from++) {
        const to = Math.min(padded.length, from + order);
        for (let at = from, node = 0; at < to; at++) {
          node = this.#child(node, padded[at] as number);
          this.count[node] = (this.count[node] as number) + 1;
        }
      }
    }
    this.parent = this.parent.slice(0, this.#size);
    this.token = this.token.slice(0, this.#size);
    this.depth = this.depth.slice(0, this.#size);
    this.occurrences = this.count.slice(0, this.#size);
    this.suffix = new Int32Array(this.#size);
    const continued = new Int32Array(this.#size);
    const startsWord = new Uint8Array(this.#size);
    for (let node = 1; node < this.#size; node++) {
      const parent = this.parent[node] as number;
      if (parent === 0) {
        startsWord[node] = this.token[node] === begin ? 1 : 0;
        continue;
      }
      startsWord[node] = startsWord[parent] as number;
      const suffix = find(
        this.parent,
        this.token,
        this.slots,
        this.suffix[parent] as number,
        this.token[node] as number,
      );
      this.suffix[node] = suffix;
      continued[suffix] = (continued[suffix] as number) + 1;
    }
    for (let node = 1; node < this.#size; node++) {
      if (this.depth[node] === order || startsWord[node] === 1) continue;
      this.count[node] = continued[node] as number;
    }
    // The mark before a word is a context only; it is never predicted.
    for (let node = 1; node < this.#size; node++) {
      if (this.parent[node] === 0 && this.token[node] === begin) this.count[node] = 0;
    }
    this.count = this.count.slice(0, this.#size);
  }

  #child(parent: number, token: number): number {
    const found = find(this.parent, this.token, this.slots, parent, token);
    if (found >= 0) return found;
    if (this.#size === this.parent.length) this.#grow();
    const node = this.#size++;
    this.parent[node] = parent;
    this.token[node] = token;
    this.depth[node] = (this.depth[parent] as number) + 1;
    this.#place(node);
    return node;
  }

  #grow(): void {
    const size = this.parent.length * 2;
    const grown = {
      parent: new Int32Array(size),
      token: new Int32Array(size),
      depth: new Uint8Array(size),
      count: new Int32Array(size),
    };
    grown.parent.set(this.parent);
    grown.token.set(this.token);
    grown.depth.set(this.depth);
    grown.count.set(this.count);
    Object.assign(this, grown);
    this.slots = new Int32Array(size * 4).fill(-1);
    for (let node = 1; node < this.#size; node++) this.#place(node);
  }

  #place(node: number): void {
    const mask = this.slots.length - 1;
    let slot = slotOf(this.parent[node] as number, this.token[node] as number, mask);
    while ((this.slots[slot] as number) >= 0) slot = (slot + 1) & mask;
    this.slots[slot] = node;
  }
}

function smooth(trie: Trie, vocabulary: number, order: number) {
  const { parent, depth, count, suffix } = trie;
  const size = parent.length;
  const discounts = discountsOf(trie, order);
  const total = new Float64Array(size);
  const withheld = new Float64Array(size);
  for (let node = 1; node < size; node++) {
    const [context, times] = [parent[node] as number, count[node] as number];
    total[context] = (total[context] as number) + times;
    withheld[context] = (withheld[context] as number) + discountOf(discounts, depth[node] as number, times);
  }
  const byDepth = nodesByDepth(depth, order);
  const probability = new Float64Array(size);
  const logProbability = new Float32Array(size);
  const logBackOff = new Float32Array(size);
  const context = new Int32Array(size);
  for (const node of byDepth) {
    const history = parent[node] as number;
    const times = count[node] as number;
    const all = total[history] as number;
    const lower = history === 0 ? 1 / (vocabulary + 1) : (probability[suffix[node] as number] as number);
    const kept = times - discountOf(discounts, depth[node] as number, times);
    const value = all === 0 ? lower : (kept + (withheld[history] as number) * lower) / all;
    probability[node] = value;
    logProbability[node] = Math.log(value);
    const ahead = total[node] as number;
    logBackOff[node] = ahead === 0 ? 0 : Math.log((withheld[node] as number) / ahead);
    // A context that nothing follows tells no more than its suffix.
    context[node] = ahead === 0 ? (context[suffix[node] as number] as number) : node;
  }
  return { logProbability, logBackOff, context };
}

function nodesByDepth(depth: Uint8Array, order: number): Int32Array {
  const starts = new Int32Array(order + 2);
  for (let node = 1; node < depth.length; node++) {
    const next = (depth[node] as number) + 1;
    starts[next] = (starts[next] as number) + 1;
  }
  for (let at = 1; at < starts.length; at++) starts[at] = (starts[at] as number) + (starts[at - 1] as number);
  const nodes = new Int32Array(depth.length - 1);
  for (let node = 1; node < depth.length; node++) {
    const at = depth[node] as number;
    nodes[starts[at] as number] = node;
    starts[at] = (starts[at] as number) + 1;
  }
  return nodes;
}

/** What is taken from n-grams seen once, twice, and more often, for each length: Chen and Goodman's formula. */
function discountsOf({ depth, count }: Trie, order: number): Float64Array {
  const seen = new Float64Array((order + 1) * 5);
  for (let node = 1; node < depth.length; node++) {
    const times = count[node] as number;
    if (times >= 1 && times <= 4) {
      const at = (depth[node] as number) * 5 + times;
      seen[at] = (seen[at] as number) + 1;
    }
  }
  const discounts = new Float64Array((order + 1) * 4);
  for (let length = 1; length <= order; length++) {
    const [, once = 0, twice = 0] = seen.subarray(length * 5, length * 5 + 3);
    const ratio = once / Math.max(1, once + 2 * twice);
    for (let times = 1; times <= 3; times++) {
      const here = seen[length * 5 + times] as number;
      const more = seen[length * 5 + times + 1] as number;
      const discount = here === 0 ? times / 2 : times - ((times + 1) * ratio * more) / here;
      discounts[length * 4 + times] = Math.min(times * 0.95, Math.max(0.05, discount));
    }
  }
  return discounts;
}

function discountOf(discounts: Float64Array, length: number, times: number): number {
  return times === 0 ? 0 : (discounts[length * 4 + Math.min(3, times)] as number);
}
