import { logOfSum, shuffle } from './classifier.ts';
import type { Kernels } from './kernels.ts';
import { mostInputs, NetworkInputs } from './network-inputs.ts';
import { type TokenInventory, type TokenizedWord, WordContext } from './word-context.ts';
import { randomNumbers } from './word-list.ts';

/** The size of a network and how it is trained. */
export interface NetworkOptions {
  /** Units of the first and the second hidden layer; multiples of 16. */
  readonly firstLayer: number;
  readonly secondLayer: number;
  /** Passes over the training words. */
  readonly epochs: number;
  /** The first step width; it falls to nothing along a line. */
  readonly rate: number;
  /** The share of first-layer units left out at random in each training step. */
  readonly dropout: number;
}

/**
 * Like the classifier, a distribution over the tokens of each letter, but from a neural network: what it sees of the
 * letter is added up row by row, rectified, and passed through a second layer to the tokens. Trained by stochastic gradient steps,
 * each row of weights with a step width that shrinks as it learns (Duchi et al. 2011, one number a row).
 */
export class LetterNetwork {
  readonly #kernels: Kernels;
  readonly #inputs: NetworkInputs;
  readonly #context: WordContext;
  readonly #choices: readonly Int32Array[];
  readonly #ranks: Uint8Array;
  readonly #first: number;
  readonly #second: number;
  /** Places in the kernels' memory, counted in floats. */
  readonly #rows: number;
  readonly #between: number;
  readonly #out: number;
  readonly #bias: number;
  readonly #hidden1: number;
  readonly #error1: number;
  readonly #hidden2: number;
  readonly #error2: number;
  readonly #outBias: Float32Array;
  readonly #left: number;
  readonly #active = new Int32Array(mostInputs);
  readonly #scores = new Float64Array(256);

  constructor(
    words: readonly TokenizedWord[],
    inventory: TokenInventory,
    kernels: Kernels,
    options: NetworkOptions,
  ) {
    const { firstLayer, secondLayer } = options;
    const tokens = inventory.letterOf.length;
    this.#kernels = kernels;
    this.#inputs = new NetworkInputs(inventory);
    this.#context = new WordContext(inventory);
    const lists: number[][] = Array.from({ length: inventory.letterCount }, () => []);
    this.#ranks = Uint8Array.from(
      inventory.letterOf,
      (letter, token) => (lists[letter]?.push(token) ?? 1) - 1,
    );
    this.#choices = lists.map((list) => Int32Array.from(list));
    this.#left = 1 / (1 - options.dropout);
    this.#first = firstLayer;
    this.#second = secondLayer;
    this.#outBias = new Float32Array(tokens);
    const sizes = [
      this.#inputs.count * firstLayer,
      secondLayer * firstLayer,
      tokens * secondLayer,
      secondLayer,
      firstLayer,
      firstLayer,
      secondLayer,
      secondLayer,
    ];
    const places = kernels.reserve(sizes) as [number, number, number, number, number, number, number, number];
    [
      this.#rows,
      this.#between,
      this.#out,
      this.#bias,
      this.#hidden1,
      this.#error1,
      this.#hidden2,
      this.#error2,
    ] = places;
    const random = randomNumbers(5);
    const spread = (place: number, size: number, width: number): void => {
      for (let index = 0; index < size; index++) {
        kernels.floats[place + index] = (random() + random() + random() + random() - 2) * width;
      }
    };
    spread(this.#rows, this.#inputs.count * firstLayer, 0.3);
    spread(this.#between, secondLayer * firstLayer, 1.7 * Math.sqrt(2 / firstLayer));
    spread(this.#out, tokens * secondLayer, 0.1);
    this.#train(words, options);
  }

  /** Natural logarithms of the probability of each token of a word given the tokens before it, summed. */
  logProbability({ letters, tokens, relatives }: TokenizedWord): number {
    let total = 0;
    this.#context.begin(letters, tokens, relatives);
    for (let at = 0; at < letters.length; at++) {
      const choices = this.#choices[letters[at] as number] as Int32Array;
      if (choices.length < 2) continue;
      this.#forward(choices, this.#inputs.write(this.#context, at, this.#active), undefined);
      const score = this.#scores[this.#ranks[tokens[at] as number] as number] as number;
      total += score - logOfSum(this.#scores, choices.length);
    }
    return total;
  }

  #train(words: readonly TokenizedWord[], { epochs, rate, dropout }: NetworkOptions): void {
    const random = randomNumbers(99);
    const order = new Int32Array(words.length).map((_, index) => index);
    const learning: Learning = {
      rows: new Float32Array(this.#inputs.count).fill(0.001),
      between: new Float32Array(this.#second).fill(0.001),
      out: new Float32Array(this.#outBias.length).fill(0.001),
      outBias: new Float32Array(this.#outBias.length).fill(0.001),
    };
    const dropped = new Uint8Array(this.#first);
    for (let epoch = 0, done = 0; epoch < epochs; epoch++) {
      shuffle(order, random);
      for (const index of order) {
        const { letters, tokens, relatives } = words[index] as TokenizedWord;
        const step = rate * (1 - done++ / (epochs * words.length));
        this.#context.begin(letters, tokens, relatives);
        for (let at = 0; at < letters.length; at++) {
          const choices = this.#choices[letters[at] as number] as Int32Array;
          if (choices.length < 2) continue;
          const inputs = this.#inputs.write(this.#context, at, this.#active);
          for (let unit = 0; unit < dropped.length; unit++) dropped[unit] = random() < dropout ? 1 : 0;
          this.#forward(choices, inputs, dropped);
          this.#learn(choices, inputs, this.#ranks[tokens[at] as number] as number, step, learning);
        }
      }
    }
  }

  /** Leaves the scores of the choices in `#scores`. */
  #forward(choices: Int32Array, inputs: number, dropped: Uint8Array | undefined): void {
    const { floats, addScaled, dot } = this.#kernels;
    // The units that stay make up for those left out.
    const left = dropped ? this.#left : 1;
    floats.fill(0, this.#hidden1, this.#hidden1 + this.#first);
    for (let index = 0; index < inputs; index++) {
      addScaled(this.#hidden1, this.#rows + (this.#active[index] as number) * this.#first, this.#first, 1);
    }
    for (let unit = 0; unit < this.#first; unit++) {
      const at = this.#hidden1 + unit;
      const sum = floats[at] as number;
      floats[at] = sum < 0 || dropped?.[unit] === 1 ? 0 : sum * left;
    }
    for (let unit = 0; unit < this.#second; unit++) {
      const sum = dot(this.#hidden1, this.#between + unit * this.#first, this.#first);
      floats[this.#hidden2 + unit] = Math.max(0, sum + (floats[this.#bias + unit] as number));
    }
    for (let rank = 0; rank < choices.length; rank++) {
      const token = choices[rank] as number;
      const sum = dot(this.#hidden2, this.#out + token * this.#second, this.#second);
      this.#scores[rank] = sum + (this.#outBias[token] as number);
    }
  }

  #learn(choices: Int32Array, inputs: number, truth: number, step: number, learning: Learning): void {
    const { floats, addScaled } = this.#kernels;
    const [first, second] = [this.#first, this.#second];
    const all = logOfSum(this.#scores, choices.length);
    const power2 = this.#power(this.#hidden2, second);
    floats.fill(0, this.#error2, this.#error2 + second);
    for (let rank = 0; rank < choices.length; rank++) {
      const error = (rank === truth ? 1 : 0) - Math.exp((this.#scores[rank] as number) - all);
      if (Math.abs(error) < 1e-3) continue;
      const token = choices[rank] as number;
      const row = this.#out + token * second;
      addScaled(this.#error2, row, second, error);
      addScaled(
        row,
        this.#hidden2,
        second,
        stepOf(learning.out, token, error * error * power2, step) * error,
      );
      const bias = stepOf(learning.outBias, token, error * error, step) * error;
      this.#outBias[token] = (this.#outBias[token] as number) + bias;
    }
    const power1 = this.#power(this.#hidden1, first);
    floats.fill(0, this.#error1, this.#error1 + first);
    for (let unit = 0; unit < second; unit++) {
      const error = floats[this.#error2 + unit] as number;
      if ((floats[this.#hidden2 + unit] as number) <= 0 || Math.abs(error) < 1e-5) continue;
      const row = this.#between + unit * first;
      addScaled(this.#error1, row, first, error);
      const change = stepOf(learning.between, unit, error * error * power1, step) * error;
      addScaled(row, this.#hidden1, first, change);
      floats[this.#bias + unit] = (floats[this.#bias + unit] as number) + change;
    }
    for (let unit = 0; unit < first; unit++) {
      const at = this.#error1 + unit;
      floats[at] = (floats[this.#hidden1 + unit] as number) <= 0 ? 0 : (floats[at] as number) * this.#left;
    }
    const power = this.#power(this.#error1, first);
    if (power === 0) return;
    for (let index = 0; index < inputs; index++) {
      const row = this.#active[index] as number;
      addScaled(this.#rows + row * first, this.#error1, first, stepOf(learning.rows, row, power, step));
    }
  }

  /** The mean square of a run of floats. */
  #power(place: number, size: number): number {
    return this.#kernels.dot(place, place, size) / size;
  }
}

/** How much each row of weights has been moved so far. */
interface Learning {
  readonly rows: Float32Array;
  readonly between: Float32Array;
  readonly out: Float32Array;
  readonly outBias: Float32Array;
}

function stepOf(moved: Float32Array, row: number, square: number, step: number): number {
  const sum = (moved[row] as number) + square;
  moved[row] = sum;
  return step / Math.sqrt(sum);
}
