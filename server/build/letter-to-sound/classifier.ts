import { randomNumbers } from './word-list.ts';

/** How a classifier is trained. */
export interface ClassifierOptions {
  /** Passes over the training words. */
  readonly epochs: number;
  /** First step width of the adaptive gradient method (Duchi et al. 2011). */
  readonly rate: number;
  /** The share of features left out at random at each training step, so that the others learn to do without them. */
  readonly dropout: number;
  /** Features of fewer training letters than this are not used. */
  readonly leastCount: number;
}

/** A word's letters with the token each of them was given; one token a letter. */
export interface TokenizedWord {
  readonly letters: readonly number[];
  readonly tokens: Int32Array;
}

/**
 * Gives each letter of a word a distribution over the tokens its letter can have, from the letters around it and the
 * tokens before it: a log-linear model trained by stochastic gradient steps, tokens before taken from the true reading.
 */
export class LetterClassifier {
  readonly #features: FeatureSet;
  readonly #choices: readonly Int32Array[];
  readonly #rankOf: Int32Array;
  readonly #weights: Float32Array;
  readonly #extractor: Extractor;

  /** `letterOf` and `phonesOf` tell of each token its letter and a number for its phones. */
  constructor(
    words: readonly TokenizedWord[],
    { letterOf, vowelOf }: { readonly letterOf: Int32Array; readonly vowelOf: Int32Array },
    isVowelLetter: (letter: number) => boolean,
    options: ClassifierOptions,
  ) {
    this.#extractor = new Extractor(vowelOf, isVowelLetter);
    const letterCount = Math.max(...letterOf) + 1;
    const lists: number[][] = Array.from({ length: letterCount }, () => []);
    this.#rankOf = new Int32Array(letterOf.length);
    letterOf.forEach((letter, token) => {
      this.#rankOf[token] = (lists[letter] as number[]).push(token) - 1;
    });
    this.#choices = lists.map((list) => Int32Array.from(list));
    this.#features = new FeatureSet();
    const hashes = this.#extractor.hashes;
    for (const { letters, tokens } of words) {
      this.#extractor.begin(letters);
      for (let at = 0; at < letters.length; at++) {
        const n = this.#extractor.extract(at, tokens);
        for (let index = 0; index < n; index++) this.#features.count(hashes[index] as number);
      }
    }
    for (const { letters, tokens } of words) {
      this.#extractor.begin(letters);
      for (let at = 0; at < letters.length; at++) {
        const n = this.#extractor.extract(at, tokens);
        const width = (this.#choices[letters[at] as number] as Int32Array).length;
        for (let index = 0; index < n; index++)
          this.#features.admit(hashes[index] as number, width, options.leastCount);
      }
    }
    this.#weights = new Float32Array(this.#features.weightCount);
    this.#train(words, options);
  }

  get size(): number {
    return this.#weights.length;
  }

  /** Natural logarithms of the probability of each token of a word given the word and the tokens before, summed. */
  logProbability(letters: readonly number[], tokens: ArrayLike<number>): number {
    const { hashes } = this.#extractor;
    let total = 0;
    this.#extractor.begin(letters);
    for (let at = 0; at < letters.length; at++) {
      const n = this.#extractor.extract(at, tokens);
      const width = (this.#choices[letters[at] as number] as Int32Array).length;
      const scores = new Float64Array(width);
      for (let index = 0; index < n; index++) {
        const base = this.#features.baseOf(hashes[index] as number);
        if (base < 0) continue;
        for (let rank = 0; rank < width; rank++)
          scores[rank] = (scores[rank] as number) + (this.#weights[base + rank] as number);
      }
      let most = Number.NEGATIVE_INFINITY;
      for (let rank = 0; rank < width; rank++) most = Math.max(most, scores[rank] as number);
      let sum = 0;
      for (let rank = 0; rank < width; rank++) sum += Math.exp((scores[rank] as number) - most);
      total += (scores[this.#rankOf[tokens[at] as number] as number] as number) - most - Math.log(sum);
    }
    return total;
  }

  #train(words: readonly TokenizedWord[], { epochs, rate, dropout }: ClassifierOptions): void {
    const { starts, bases, widths, golds } = this.#examples(words);
    const weights = this.#weights;
    const squares = new Float32Array(weights.length).fill(1e-2);
    const count = golds.length;
    const random = randomNumbers(7);
    const order = new Int32Array(count).map((_, index) => index);
    const active = new Int32Array(256);
    const scores = new Float64Array(256);
    const dropLimit = Math.floor(dropout * 65536);
    let noise = 12345;
    for (let epoch = 0; epoch < epochs; epoch++) {
      for (let last = count - 1; last > 0; last--) {
        const other = Math.floor(random() * (last + 1));
        const kept = order[last] as number;
        order[last] = order[other] as number;
        order[other] = kept;
      }
      for (let step = 0; step < count; step++) {
        const example = order[step] as number;
        const width = widths[example] as number;
        if (width === 1) continue;
        let n = 0;
        for (let index = starts[example] as number; index < (starts[example + 1] as number); index++) {
          noise = (Math.imul(noise, 1664525) + 1013904223) | 0;
          if (noise >>> 16 < dropLimit) continue;
          active[n++] = bases[index] as number;
        }
        for (let rank = 0; rank < width; rank++) scores[rank] = 0;
        for (let index = 0; index < n; index++) {
          const base = active[index] as number;
          for (let rank = 0; rank < width; rank++)
            scores[rank] = (scores[rank] as number) + (weights[base + rank] as number);
        }
        let most = Number.NEGATIVE_INFINITY;
        const scale = 1 / (1 - dropout);
        for (let rank = 0; rank < width; rank++) {
          scores[rank] = (scores[rank] as number) * scale;
          if ((scores[rank] as number) > most) most = scores[rank] as number;
        }
        let sum = 0;
        for (let rank = 0; rank < width; rank++) {
          const value = Math.exp((scores[rank] as number) - most);
          scores[rank] = value;
          sum += value;
        }
        const gold = golds[example] as number;
        for (let rank = 0; rank < width; rank++) {
          const gradient = (rank === gold ? 1 : 0) - (scores[rank] as number) / sum;
          if (gradient < 1e-4 && gradient > -1e-4) continue;
          const square = gradient * gradient;
          for (let index = 0; index < n; index++) {
            const at = (active[index] as number) + rank;
            const seen = (squares[at] as number) + square;
            squares[at] = seen;
            weights[at] = (weights[at] as number) + (rate * gradient) / Math.sqrt(seen);
          }
        }
      }
    }
  }

  #examples(words: readonly TokenizedWord[]) {
    const { hashes } = this.#extractor;
    const letterTotal = words.reduce((sum, { letters }) => sum + letters.length, 0);
    const starts = new Int32Array(letterTotal + 1);
    const widths = new Uint8Array(letterTotal);
    const golds = new Uint8Array(letterTotal);
    let bases = new Int32Array(1 << 20);
    let [example, size] = [0, 0];
    for (const { letters, tokens } of words) {
      this.#extractor.begin(letters);
      for (let at = 0; at < letters.length; at++, example++) {
        const n = this.#extractor.extract(at, tokens);
        if (size + n > bases.length) {
          const grown = new Int32Array(bases.length * 2);
          grown.set(bases);
          bases = grown;
        }
        for (let index = 0; index < n; index++) {
          const base = this.#features.baseOf(hashes[index] as number);
          if (base >= 0) bases[size++] = base;
        }
        starts[example + 1] = size;
        widths[example] = (this.#choices[letters[at] as number] as Int32Array).length;
        golds[example] = this.#rankOf[tokens[at] as number] as number;
      }
    }
    return { starts, widths, golds, bases };
  }
}

/** Numbers of features by their hash; features seen too seldom have none. */
class FeatureSet {
  readonly #hashes = new Int32Array(1 << 24);
  readonly #counts = new Uint8Array(1 << 24);
  readonly #bases = new Int32Array(1 << 24).fill(-1);
  weightCount = 0;

  #slot(hash: number): number {
    let slot = (Math.imul(hash, 0x9e3779b1) >>> 8) & 0xffffff;
    while (this.#counts[slot] !== 0 && this.#hashes[slot] !== hash) slot = (slot + 1) & 0xffffff;
    return slot;
  }

  count(hash: number): void {
    const slot = this.#slot(hash);
    this.#hashes[slot] = hash;
    this.#counts[slot] = Math.min(255, (this.#counts[slot] as number) + 1);
  }

  admit(hash: number, width: number, leastCount: number): void {
    const slot = this.#slot(hash);
    if ((this.#counts[slot] as number) < leastCount || (this.#bases[slot] as number) >= 0) return;
    this.#bases[slot] = this.weightCount;
    this.weightCount += width;
  }

  baseOf(hash: number): number {
    return this.#bases[this.#slot(hash)] as number;
  }
}

/** The features of a letter in its word, as hashes. */
class Extractor {
  readonly hashes = new Int32Array(256);
  readonly #vowelOf: Int32Array;
  readonly #isVowel: (letter: number) => boolean;
  #letters: readonly number[] = [];
  #groups = new Int32Array(64);

  constructor(vowelOf: Int32Array, isVowelLetter: (letter: number) => boolean) {
    this.#vowelOf = vowelOf;
    this.#isVowel = isVowelLetter;
  }

  begin(letters: readonly number[]): void {
    this.#letters = letters;
    if (this.#groups.length < letters.length + 1) this.#groups = new Int32Array(letters.length * 2);
    let n = 0;
    for (let at = 0; at < letters.length; at++) {
      const here = this.#isVowel(letters[at] as number);
      if (here && !(at > 0 && this.#isVowel(letters[at - 1] as number))) n++;
      this.#groups[at] = n;
    }
    this.#groups[letters.length] = n;
  }

  #letter(at: number): number {
    return at < 0 || at >= this.#letters.length ? 40 : (this.#letters[at] as number);
  }

  extract(at: number, tokens: ArrayLike<number>): number {
    const { hashes } = this;
    const length = this.#letters.length;
    let n = 0;
    const c0 = this.#letter(at);
    // Windows of letters around this one, up to six on either side and one mark past the border.
    for (let left = 0; left <= 6; left++) {
      if (at - left < -1) break;
      let hash = mix(1, left);
      for (let index = left; index >= 0; index--) hash = mix(hash, this.#letter(at - index));
      hashes[n++] = hash;
      for (let right = 1; right <= 6 && left + right <= 9; right++) {
        if (at + right > length) break;
        hash = mix(hash, this.#letter(at + right));
        hashes[n++] = hash;
      }
    }
    // The tokens before, with the letters ahead.
    let hash = mix(2, c0);
    let vowel = 0;
    let vowel2 = 0;
    for (let back = at - 1; back >= 0; back--) {
      const v = this.#vowelOf[tokens[back] as number] as number;
      if (v !== 0) {
        if (vowel === 0) vowel = v;
        else {
          vowel2 = v;
          break;
        }
      }
    }
    for (let back = 1; back <= 6; back++) {
      if (at - back < -1) break;
      hash = mix(hash, at - back < 0 ? 9999 : (tokens[at - back] as number));
      let ahead = hash;
      hashes[n++] = ahead;
      for (let right = 1; right <= 3; right++) {
        if (at + right > length) break;
        ahead = mix(ahead, this.#letter(at + right) + 100 * right);
        hashes[n++] = ahead;
      }
    }
    const window00 = mix(3, c0);
    const window11 = mix(mix(window00, this.#letter(at - 1)), this.#letter(at + 1));
    const window12 = mix(window11, this.#letter(at + 2));
    const window22 = mix(window12, this.#letter(at - 2));
    const sides =
      Math.min(3, this.#groups[at] as number) * 8 +
      Math.min(3, (this.#groups[length] as number) - (this.#groups[at] as number));
    hashes[n++] = mix(mix(4, vowel), window00);
    hashes[n++] = mix(mix(4, vowel), window11);
    hashes[n++] = mix(mix(4, vowel), window12);
    hashes[n++] = mix(mix(mix(5, vowel), vowel2), window11);
    hashes[n++] = mix(mix(6, sides), window00);
    hashes[n++] = mix(mix(6, sides), window11);
    hashes[n++] = mix(mix(6, sides), window12);
    hashes[n++] = mix(mix(6, sides), window22);
    hashes[n++] = mix(mix(mix(7, sides), vowel), window11);
    const e1 = this.#letter(length - 1);
    const e2 = mix(e1, this.#letter(length - 2));
    const e3 = mix(e2, this.#letter(length - 3));
    const e4 = mix(e3, this.#letter(length - 4));
    hashes[n++] = mix(mix(8, e1), window11);
    hashes[n++] = mix(mix(8, e2), window00);
    hashes[n++] = mix(mix(8, e2), window11);
    hashes[n++] = mix(mix(8, e3), window00);
    hashes[n++] = mix(mix(8, e3), window11);
    hashes[n++] = mix(mix(8, e4), window00);
    hashes[n++] = mix(mix(mix(9, e2), sides), window11);
    const b2 = mix(this.#letter(0), this.#letter(1));
    hashes[n++] = mix(mix(10, b2), window11);
    hashes[n++] = mix(mix(10, mix(b2, this.#letter(2))), window11);
    return n;
  }
}

function mix(hash: number, value: number): number {
  let mixed = Math.imul(hash ^ (value + 0x7f4a7c15), 0x85ebca6b);
  mixed ^= mixed >>> 15;
  return Math.imul(mixed, 0xc2b2ae35) ^ (mixed >>> 13);
}
