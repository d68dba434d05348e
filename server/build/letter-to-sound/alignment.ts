/** How many letters and phones one token of an alignment may hold. */
export interface TokenShape {
  readonly letters: number;
  readonly phones: number;
}

/** Training pairs cut into tokens: letters with the phones they say. */
export interface Alignment {
  /** The tokens; a sequence's numbers index this list. */
  readonly tokens: readonly Token[];
  /** One sequence a pair that could be cut at all, in the order of the pairs. */
  readonly sequences: readonly Int32Array[];
}

/** Letters with the phones they say, both as numbers of the pair's own alphabets. */
export interface Token {
  readonly letters: readonly number[];
  readonly phones: readonly number[];
}

/** A word and one of its readings, as numbers: letters below `letterCount`, phones below `phoneCount`. */
export interface NumberedPair {
  readonly letters: readonly number[];
  readonly phones: readonly number[];
}

/**
 * Cuts every pair into tokens of the allowed shapes. The tokens' probabilities are learned by expectation-maximisation
 * over all ways to cut all pairs (as in many-to-many alignment, Jiampojamarn et al. 2007), and the likeliest way is kept.
 * A pair that no sequence of allowed tokens can cut is left out. Letters come one or two to a token, phones up to three.
 */
export function align(
  pairs: readonly NumberedPair[],
  shapes: readonly TokenShape[],
  {
    letterCount,
    phoneCount,
    rounds,
  }: { readonly letterCount: number; readonly phoneCount: number; readonly rounds: number },
): Alignment {
  const lattice = new Lattice(shapes, letterCount, phoneCount);
  let scores = new Float64Array(lattice.keyCount).fill(1);
  for (let round = 0; round < rounds; round++) {
    const counts = new Float64Array(lattice.keyCount);
    for (const pair of pairs) lattice.addExpectedCounts(pair, scores, counts);
    const total = counts.reduce((sum, count) => sum + count, 0);
    scores = counts.map((count) => count / total);
  }
  const numbers = new Map<number, number>();
  const tokens: Token[] = [];
  const sequences: Int32Array[] = [];
  for (const pair of pairs) {
    const cuts = lattice.bestPath(pair, scores);
    if (cuts === undefined) continue;
    sequences.push(
      Int32Array.from(cuts, ({ key, token }) => {
        const known = numbers.get(key);
        if (known !== undefined) return known;
        numbers.set(key, tokens.length);
        return tokens.push(token) - 1;
      }),
    );
  }
  return { tokens, sequences };
}

interface Cut {
  readonly key: number;
  readonly token: Token;
}

/** All ways to cut a pair. A node is (letters used, phones used); an edge is a token with a numeric key. */
class Lattice {
  readonly keyCount: number;
  readonly #shapes: readonly TokenShape[];
  readonly #letterCount: number;
  readonly #phoneCount: number;
  readonly #phoneKeys: number;

  constructor(shapes: readonly TokenShape[], letterCount: number, phoneCount: number) {
    this.#shapes = shapes;
    this.#letterCount = letterCount;
    this.#phoneCount = phoneCount + 1;
    const most = Math.max(...shapes.map((shape) => shape.phones));
    this.#phoneKeys = this.#phoneCount ** most;
    this.keyCount = (letterCount + 1) ** 2 * this.#phoneKeys;
  }

  #key({ letters, phones }: NumberedPair, at: number, from: number, shape: TokenShape): number {
    let key = 0;
    for (let index = 0; index < shape.letters; index++)
      key = key * (this.#letterCount + 1) + (letters[at + index] as number) + 1;
    let phoneKey = 0;
    for (let index = 0; index < shape.phones; index++)
      phoneKey = phoneKey * this.#phoneCount + (phones[from + index] as number) + 1;
    return key * this.#phoneKeys + phoneKey;
  }

  addExpectedCounts(pair: NumberedPair, scores: Float64Array, counts: Float64Array): void {
    const [height, width] = [pair.letters.length + 1, pair.phones.length + 1];
    const forward = new Float64Array(height * width);
    const backward = new Float64Array(height * width);
    forward[0] = 1;
    backward[height * width - 1] = 1;
    for (let node = 0; node < forward.length; node++) {
      const ahead = forward[node] as number;
      if (ahead > 0) {
        this.#eachEdge(pair, node, (to, key) => {
          forward[to] = (forward[to] as number) + ahead * (scores[key] as number);
        });
      }
    }
    const total = forward[height * width - 1] as number;
    if (total === 0) return;
    for (let node = forward.length - 1; node >= 0; node--) {
      const ahead = forward[node] as number;
      if (ahead === 0) continue;
      this.#eachEdge(pair, node, (to, key) => {
        const behind = (backward[to] as number) * (scores[key] as number);
        if (behind === 0) return;
        backward[node] = (backward[node] as number) + behind;
        counts[key] = (counts[key] as number) + (ahead * behind) / total;
      });
    }
  }

  bestPath(pair: NumberedPair, scores: Float64Array): Cut[] | undefined {
    const [height, width] = [pair.letters.length + 1, pair.phones.length + 1];
    const best = new Float64Array(height * width);
    const from = new Int32Array(height * width).fill(-1);
    best[0] = 1;
    for (let node = 0; node < best.length; node++) {
      const ahead = best[node] as number;
      if (ahead === 0) continue;
      this.#eachEdge(pair, node, (to, key) => {
        const value = ahead * (scores[key] as number);
        if (value <= (best[to] as number)) return;
        best[to] = value;
        from[to] = node;
      });
    }
    if (best[best.length - 1] === 0) return undefined;
    const cuts: Cut[] = [];
    for (let node = best.length - 1; node > 0; ) {
      const before = from[node] as number;
      const [at, start] = [Math.floor(before / width), before % width];
      const shape = { letters: Math.floor(node / width) - at, phones: (node % width) - start };
      cuts.push({
        key: this.#key(pair, at, start, shape),
        token: {
          letters: pair.letters.slice(at, at + shape.letters),
          phones: pair.phones.slice(start, start + shape.phones),
        },
      });
      node = before;
    }
    return cuts.reverse();
  }

  #eachEdge(pair: NumberedPair, node: number, visit: (to: number, key: number) => void): void {
    const width = pair.phones.length + 1;
    const [at, from] = [Math.floor(node / width), node % width];
    for (const shape of this.#shapes) {
      if (at + shape.letters > pair.letters.length || from + shape.phones > pair.phones.length) continue;
      visit(node + shape.letters * width + shape.phones, this.#key(pair, at, from, shape));
    }
  }
}
