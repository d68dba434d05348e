import type { Token } from './alignment.ts';
import type { NgramModel } from './n-gram.ts';

/** A reading a model offers for a word. */
export interface Candidate {
  readonly phones: readonly number[];
  /** Natural logarithm of the probability of letters and phones together, summed over the cuts the search kept. */
  readonly score: number;
  /** The tokens of the likeliest single cut. */
  readonly tokens: readonly number[];
}

interface Step {
  readonly before: Step | undefined;
  readonly token: number;
}

interface Place {
  readonly context: number;
  /** How many phones are behind. */
  readonly used: number;
  score: number;
}

interface Path {
  readonly context: number;
  /** A number that stands for the phones so far. */
  readonly sounds: number;
  readonly last: Step | undefined;
  score: number;
  /** The score of the best single way here, whose steps are kept. */
  single: number;
}

/** Finds the likeliest readings of a word by a beam search over token sequences, adding up the ways to the same phones. */
export class Decoder {
  readonly #model: NgramModel;
  readonly #tokens: readonly Token[];
  readonly #byLetters = new Map<string, number[]>();
  readonly #longest: number;
  readonly #beam: number;
  readonly #margin: number;

  constructor(
    model: NgramModel,
    tokens: readonly Token[],
    { beam, margin }: { readonly beam: number; readonly margin: number },
  ) {
    this.#model = model;
    this.#tokens = tokens;
    this.#beam = beam;
    this.#margin = margin;
    this.#longest = Math.max(...tokens.map((token) => token.letters.length));
    tokens.forEach((token, number) => {
      const key = token.letters.join(' ');
      this.#byLetters.set(key, [...(this.#byLetters.get(key) ?? []), number]);
    });
  }

  /** At most `most` readings, the likeliest first; none when a letter was never seen in training. */
  readings(letters: readonly number[], most: number): Candidate[] {
    const columns: Map<number, Path>[] = Array.from({ length: letters.length + 1 }, () => new Map());
    const bests = new Float64Array(letters.length + 1).fill(Number.NEGATIVE_INFINITY);
    columns[0]?.set(0, { context: this.#model.start, sounds: 0, last: undefined, score: 0, single: 0 });
    for (let at = 0; at < letters.length; at++) {
      const paths = this.#kept(columns[at] as Map<number, Path>);
      for (let length = 1; length <= this.#longest && at + length <= letters.length; length++) {
        const choices = this.#byLetters.get(letters.slice(at, at + length).join(' '));
        const column = columns[at + length] as Map<number, Path>;
        if (choices === undefined) continue;
        for (const path of paths) {
          for (const token of choices) {
            const gain = this.#model.logProbability(path.context, token);
            const score = path.score + gain;
            if (score < (bests[at + length] as number) - this.#margin) continue;
            if (score > (bests[at + length] as number)) bests[at + length] = score;
            const context = this.#model.next(path.context, token);
            const sounds = extended(path.sounds, (this.#tokens[token] as Token).phones);
            add(column, context + sounds, {
              context,
              sounds,
              last: { before: path.last, token },
              score,
              single: path.single + gain,
            });
          }
        }
      }
    }
    return this.#finished(columns[letters.length] as Map<number, Path>, most);
  }

  /** Natural logarithm of the probability of these letters and phones together, over all ways to cut them (the likelier ones). */
  logProbability(letters: readonly number[], phones: readonly number[]): number {
    const columns: Map<number, Place>[] = Array.from({ length: letters.length + 1 }, () => new Map());
    columns[0]?.set(0, { context: this.#model.start, used: 0, score: 0 });
    for (let at = 0; at < letters.length; at++) {
      const places = [...(columns[at] as Map<number, Place>).values()];
      const floor = Math.max(...places.map((place) => place.score)) - this.#margin;
      for (let length = 1; length <= this.#longest && at + length <= letters.length; length++) {
        const choices = this.#byLetters.get(letters.slice(at, at + length).join(' ')) ?? [];
        const column = columns[at + length] as Map<number, Place>;
        for (const place of places) {
          if (place.score < floor) continue;
          for (const token of choices) {
            const said = (this.#tokens[token] as Token).phones;
            if (said.some((phone, index) => phone !== phones[place.used + index])) continue;
            const used = place.used + said.length;
            const score = place.score + this.#model.logProbability(place.context, token);
            const context = this.#model.next(place.context, token);
            const key = context * 256 + used;
            const known = column.get(key);
            if (known === undefined) column.set(key, { context, used, score });
            else known.score = logOfSum(known.score, score);
          }
        }
      }
    }
    let total = Number.NEGATIVE_INFINITY;
    for (const { context, used, score } of columns[letters.length]?.values() ?? []) {
      if (used === phones.length)
        total = logOfSum(total, score + this.#model.logProbability(context, this.#model.end));
    }
    return total;
  }

  #kept(column: Map<number, Path>): Path[] {
    const paths = [...column.values()].sort((a, b) => b.score - a.score);
    const floor = (paths[0]?.score ?? 0) - this.#margin;
    return paths.slice(0, this.#beam).filter((path) => path.score >= floor);
  }

  #finished(column: Map<number, Path>, most: number): Candidate[] {
    const merged = new Map<number, Path>();
    for (const path of column.values()) {
      const gain = this.#model.logProbability(path.context, this.#model.end);
      add(merged, path.sounds, { ...path, score: path.score + gain, single: path.single + gain });
    }
    return [...merged.values()]
      .sort((a, b) => b.score - a.score)
      .slice(0, most)
      .map(({ last, score }) => {
        const tokens = tokensOf(last);
        return { phones: tokens.flatMap((token) => (this.#tokens[token] as Token).phones), tokens, score };
      });
  }
}

function tokensOf(last: Step | undefined): number[] {
  const tokens: number[] = [];
  for (let step = last; step; step = step.before) tokens.push(step.token);
  return tokens.reverse();
}

function add(column: Map<number, Path>, key: number, path: Path): void {
  const known = column.get(key);
  if (known === undefined) {
    column.set(key, path);
    return;
  }
  const score = logOfSum(known.score, path.score);
  if (path.single > known.single) column.set(key, { ...path, score });
  else known.score = score;
}

/** Phones so far as one number below 2^52, spread so that two different strings meet by accident once in 10^15. */
function extended(sounds: number, phones: readonly number[]): number {
  let value = sounds;
  for (const phone of phones) value = (value * 48_271 + (phone + 1) * 2_654_435_761) % 4_503_599_627_370_449;
  return value;
}

function logOfSum(a: number, b: number): number {
  const [more, less] = a > b ? [a, b] : [b, a];
  return less === Number.NEGATIVE_INFINITY ? more : more + Math.log1p(Math.exp(less - more));
}
