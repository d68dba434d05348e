import { mostFeatures, writeFeatures } from './classifier-features.ts';
import { FeatureTable } from './feature-table.ts';
import { type TokenInventory, type TokenizedWord, WordContext } from './word-context.ts';
import { randomNumbers } from './word-list.ts';

/** How a classifier is trained. */
export interface ClassifierOptions {
  /** Passes over the training words. */
  readonly epochs: number;
  /** Step width of the adaptive gradient method (Duchi et al. 2011). */
  readonly rate: number;
  /** The share of features left out at random in each training step, so that the others learn to do without them. */
  readonly dropout: number;
  /** Features of fewer training letters than this are not used. */
  readonly leastCount: number;
}

/**
 * Gives each letter of a word a distribution over the tokens its letter can have, from the letters around it, the tokens
 * before it and the word's relatives: a log-linear model, trained by stochastic gradient steps on the true tokens.
 */
export class LetterClassifier {
  readonly #features: FeatureTable;
  /** The tokens of each letter, and the place of each token among those of its letter. */
  readonly #widths: Uint8Array;
  readonly #ranks: Uint8Array;
  readonly #weights: Float32Array;
  readonly #context: WordContext;
  readonly #hashes = new Int32Array(mostFeatures);
  readonly #scores = new Float64Array(256);

  constructor(words: readonly TokenizedWord[], inventory: TokenInventory, options: ClassifierOptions) {
    this.#context = new WordContext(inventory);
    this.#widths = new Uint8Array(inventory.letterCount);
    this.#ranks = Uint8Array.from(inventory.letterOf, (letter) => {
      const rank = this.#widths[letter] as number;
      this.#widths[letter] = rank + 1;
      return rank;
    });
    this.#features = new FeatureTable(words.length);
    this.#eachLetter(words, (_, hash) => this.#features.count(hash));
    this.#eachLetter(words, (letter, hash) =>
      this.#features.admit(hash, this.#widths[letter] as number, options.leastCount),
    );
    this.#weights = new Float32Array(this.#features.weightCount);
    this.#train(this.#examplesOf(words), options);
  }

  /** Natural logarithms of the probability of each token of a word given the tokens before it, summed. */
  logProbability({ letters, tokens, relatives }: TokenizedWord): number {
    const scores = this.#scores;
    let total = 0;
    this.#context.begin(letters, tokens, relatives);
    for (let at = 0; at < letters.length; at++) {
      const width = this.#widths[letters[at] as number] as number;
      scores.fill(0, 0, width);
      const count = writeFeatures(this.#context, at, this.#hashes);
      for (let index = 0; index < count; index++) {
        const base = this.#features.baseOf(this.#hashes[index] as number);
        if (base < 0) continue;
        for (let rank = 0; rank < width; rank++) {
          scores[rank] = (scores[rank] as number) + (this.#weights[base + rank] as number);
        }
      }
      const rank = this.#ranks[tokens[at] as number] as number;
      const score = scores[rank] as number;
      total += score - logOfSum(scores, width);
    }
    return total;
  }

  #eachLetter(words: readonly TokenizedWord[], visit: (letter: number, hash: number) => void): void {
    for (const { letters, tokens, relatives } of words) {
      this.#context.begin(letters, tokens, relatives);
      for (let at = 0; at < letters.length; at++) {
        const count = writeFeatures(this.#context, at, this.#hashes);
        for (let index = 0; index < count; index++)
          visit(letters[at] as number, this.#hashes[index] as number);
      }
    }
  }

  /** The features of every letter that has a choice, as places in the weights, laid out once for all epochs. */
  #examplesOf(words: readonly TokenizedWord[]): Examples {
    const letterCount = words.reduce((sum, { letters }) => sum + letters.length, 0);
    const starts = new Int32Array(letterCount + 1);
    const widths = new Uint8Array(letterCount);
    const golds = new Uint8Array(letterCount);
    let bases = new Int32Array(1 << 20);
    let [count, size] = [0, 0];
    for (const { letters, tokens, relatives } of words) {
      this.#context.begin(letters, tokens, relatives);
      for (let at = 0; at < letters.length; at++) {
        const width = this.#widths[letters[at] as number] as number;
        if (width < 2) continue;
        const features = writeFeatures(this.#context, at, this.#hashes);
        if (size + features > bases.length) {
          const grown = new Int32Array(bases.length * 2);
          grown.set(bases);
          bases = grown;
        }
        for (let index = 0; index < features; index++) {
          const base = this.#features.baseOf(this.#hashes[index] as number);
          if (base >= 0) bases[size++] = base;
        }
        widths[count] = width;
        golds[count] = this.#ranks[tokens[at] as number] as number;
        starts[++count] = size;
      }
    }
    return { count, starts, widths, golds, bases };
  }

  #train({ count, starts, widths, golds, bases }: Examples, options: ClassifierOptions): void {
    const { epochs, rate, dropout } = options;
    const weights = this.#weights;
    const squares = new Float32Array(weights.length).fill(0.01);
    const random = randomNumbers(7);
    const order = new Int32Array(count).map((_, index) => index);
    const active = new Int32Array(mostFeatures);
    const scores = this.#scores;
    const left = 1 / (1 - dropout);
    for (let epoch = 0; epoch < epochs; epoch++) {
      shuffle(order, random);
      for (const example of order) {
        const width = widths[example] as number;
        let features = 0;
        for (let index = starts[example] as number; index < (starts[example + 1] as number); index++) {
          if (random() >= dropout) active[features++] = bases[index] as number;
        }
        scores.fill(0, 0, width);
        for (let index = 0; index < features; index++) {
          const base = active[index] as number;
          for (let rank = 0; rank < width; rank++) {
            scores[rank] = (scores[rank] as number) + (weights[base + rank] as number) * left;
          }
        }
        const all = logOfSum(scores, width);
        for (let rank = 0; rank < width; rank++) {
          const truth = rank === golds[example] ? 1 : 0;
          const gradient = truth - Math.exp((scores[rank] as number) - all);
          if (Math.abs(gradient) < 1e-4) continue;
          for (let index = 0; index < features; index++) {
            const at = (active[index] as number) + rank;
            const square = (squares[at] as number) + gradient * gradient;
            squares[at] = square;
            weights[at] = (weights[at] as number) + (rate * gradient) / Math.sqrt(square);
          }
        }
      }
    }
  }
}

interface Examples {
  readonly count: number;
  /** Where each example's features begin in `bases`. */
  readonly starts: Int32Array;
  readonly widths: Uint8Array;
  /** The rank of the true token. */
  readonly golds: Uint8Array;
  readonly bases: Int32Array;
}

/** The natural logarithm of the sum of the exponentials of the first `count` numbers. */
export function logOfSum(values: Float64Array, count: number): number {
  let most = Number.NEGATIVE_INFINITY;
  for (let index = 0; index < count; index++) most = Math.max(most, values[index] as number);
  let sum = 0;
  for (let index = 0; index < count; index++) sum += Math.exp((values[index] as number) - most);
  return most + Math.log(sum);
}

/** Puts numbers in a random order, in place. */
export function shuffle(numbers: Int32Array, random: () => number): void {
  for (let last = numbers.length - 1; last > 0; last--) {
    const other = Math.floor(random() * (last + 1));
    const kept = numbers[last] as number;
    numbers[last] = numbers[other] as number;
    numbers[other] = kept;
  }
}
