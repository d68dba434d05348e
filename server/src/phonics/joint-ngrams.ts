/**
 * A compact n-gram model of letter-and-sound tokens, searched in place in its file's bytes (written by
 * `server/build/letter-to-sound/compact-model.ts`). All logarithms are natural ones.
 */
export interface JointNgrams {
  /** The description of each token, by its number. */
  readonly names: readonly string[];
  /** The context before a word. */
  readonly start: Context;
  /** What the model makes of a token after a context; its probability alone decides whether `after` is worth asking for. */
  logProbability(context: Context, token: number): number;
  /** The context once the token has been added. */
  after(context: Context, token: number): Context;
  /** Logarithm of the probability that the word ends after the context. */
  logProbabilityOfEnd(context: Context): number;
}

/** The nodes of the last tokens: of none, of the last one, of the last two and so on; -1 where the model has none. */
export type Context = readonly number[];

/** Opens a model's bytes. @throws Error when they are not a model of this version. */
export function openJointNgrams(bytes: Uint8Array): JointNgrams {
  const cursor = { at: 0 };
  if (line(bytes, cursor) !== 'battledore letter-to-sound 1') {
    throw new Error('This is not a Battledore letter-to-sound model of this version.');
  }
  const length = Number(line(bytes, cursor));
  const names = text(bytes, cursor.at, cursor.at + length).split('\n');
  cursor.at += length + 1;
  const order = Number(line(bytes, cursor));
  const sizes = line(bytes, cursor).split(' ').map(Number);
  const levels = sizes.map((size, depth) => openLevel(bytes, cursor, size, depth === order - 1));
  return new FileNgrams(bytes, names, levels);
}

/** Where the columns of one n-gram length begin in the bytes; each column has `size` bytes. */
interface Level {
  readonly size: number;
  readonly tokensLow: number;
  readonly tokensHigh: number;
  readonly probabilities: number;
  readonly backOffs: number;
  /** Number of the first child of each node, and past the last one the number of all; empty for the longest n-grams. */
  readonly children: Uint32Array;
}

function openLevel(bytes: Uint8Array, cursor: { at: number }, size: number, isLongest: boolean): Level {
  const column = (index: number) => cursor.at + index * size;
  const children = new Uint32Array(isLongest ? 0 : size + 1);
  for (let node = 0; node + 1 < children.length; node++) {
    const count = (bytes[column(4) + node] ?? 0) + ((bytes[column(5) + node] ?? 0) << 8);
    children[node + 1] = (children[node] ?? 0) + count;
  }
  const level = {
    size,
    tokensLow: column(0),
    tokensHigh: column(1),
    probabilities: column(2),
    backOffs: column(3),
    children,
  };
  cursor.at = column(isLongest ? 3 : 6);
  return level;
}

class FileNgrams implements JointNgrams {
  readonly names: readonly string[];
  readonly start: Context;
  readonly #bytes: Uint8Array;
  readonly #levels: readonly Level[];

  constructor(bytes: Uint8Array, names: readonly string[], levels: readonly Level[]) {
    this.names = names;
    this.#bytes = bytes;
    this.#levels = levels;
    this.start = this.after([0], names.length + 1);
  }

  logProbability(context: Context, token: number): number {
    let total = 0;
    for (let depth = context.length - 1; depth >= 0; depth--) {
      const node = context[depth] ?? -1;
      if (node < 0) continue;
      const child = this.#child(depth, node, token);
      if (child >= 0)
        return total - (this.#bytes[(this.#levels[depth]?.probabilities ?? 0) + child] ?? 0) / 16;
      if (depth > 0) total += (this.#bytes[(this.#levels[depth - 1]?.backOffs ?? 0) + node] ?? 0) / 16 - 8;
    }
    return total - 16;
  }

  logProbabilityOfEnd(context: Context): number {
    return this.logProbability(context, this.names.length);
  }

  after(context: Context, token: number): Context {
    const next = [0];
    const longest = Math.min(context.length, this.#levels.length - 1);
    for (let depth = 0; depth < longest; depth++) {
      const node = context[depth] ?? -1;
      next.push(node < 0 ? -1 : this.#child(depth, node, token));
    }
    while ((next.at(-1) ?? 0) < 0) next.pop();
    return next;
  }

  /** The node that extends `node`, an n-gram of `depth` tokens, by the token; -1 when there is none. */
  #child(depth: number, node: number, token: number): number {
    const level = this.#levels[depth];
    if (level === undefined) return -1;
    const parents = depth === 0 ? undefined : this.#levels[depth - 1]?.children;
    let from = parents ? (parents[node] ?? 0) : 0;
    let to = (parents ? (parents[node + 1] ?? 0) : level.size) - 1;
    while (from <= to) {
      const middle = (from + to) >> 1;
      const found =
        (this.#bytes[level.tokensLow + middle] ?? 0) + ((this.#bytes[level.tokensHigh + middle] ?? 0) << 8);
      if (found === token) return middle;
      if (found < token) from = middle + 1;
      else to = middle - 1;
    }
    return -1;
  }
}

function line(bytes: Uint8Array, cursor: { at: number }): string {
  const end = bytes.indexOf(0x0a, cursor.at);
  const start = cursor.at;
  cursor.at = (end < 0 ? bytes.length : end) + 1;
  return text(bytes, start, cursor.at - 1);
}

function text(bytes: Uint8Array, start: number, end: number): string {
  let result = '';
  for (let at = start; at < end; at += 8192) {
    result += String.fromCharCode(...bytes.subarray(at, Math.min(end, at + 8192)));
  }
  return result;
}
