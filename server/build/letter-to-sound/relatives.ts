import type { Relatives } from './word-context.ts';

/** Letters in common that make a word a relative. */
const leastShared = 3;

/** Finds the training words that share most of a word's beginning or end; the word itself is not its own relative. */
export class RelativeFinder {
  readonly #front: PrefixFinder;
  readonly #back: PrefixFinder;

  /** One word a sequence, one letter a token; of several readings of a word the first counts. */
  constructor(words: readonly { readonly letters: readonly number[]; readonly tokens: Int32Array }[]) {
    this.#front = new PrefixFinder(words);
    this.#back = new PrefixFinder(
      words.map(({ letters, tokens }) => ({
        letters: [...letters].reverse(),
        tokens: tokens.slice().reverse(),
      })),
    );
  }

  find(letters: readonly number[]): Relatives {
    const behind = this.#back.find([...letters].reverse()).map((tokens) => tokens.reverse());
    return [...this.#front.find(letters), ...behind];
  }
}

class PrefixFinder {
  readonly #keys: readonly string[];
  readonly #tokens = new Map<string, Int32Array>();

  constructor(words: readonly { readonly letters: readonly number[]; readonly tokens: Int32Array }[]) {
    for (const { letters, tokens } of words) {
      const key = keyOf(letters);
      if (!this.#tokens.has(key)) this.#tokens.set(key, tokens);
    }
    this.#keys = [...this.#tokens.keys()].sort();
  }

  /** What the neighbours in the order of the letters say, the one that shares more letters first. */
  find(letters: readonly number[]): Int32Array[] {
    const key = keyOf(letters);
    let [low, high] = [0, this.#keys.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((this.#keys[middle] as string) < key) low = middle + 1;
      else high = middle;
    }
    const after = this.#keys[low] === key ? low + 1 : low;
    return [low - 1, after]
      .map((place) => this.#shared(key, this.#keys[place]))
      .sort((a, b) => b.count - a.count)
      .map(({ tokens }) => tokens);
  }

  #shared(key: string, other: string | undefined): { readonly count: number; readonly tokens: Int32Array } {
    const tokens = new Int32Array(key.length).fill(-1);
    if (other === undefined) return { count: 0, tokens };
    let count = 0;
    while (count < key.length && key[count] === other[count]) count++;
    if (count < leastShared) return { count: 0, tokens };
    const said = this.#tokens.get(other);
    for (let at = 0; at < count; at++) tokens[at] = said?.[at] ?? -1;
    return { count, tokens };
  }
}

function keyOf(letters: readonly number[]): string {
  return String.fromCharCode(...letters.map((letter) => letter + 0x100));
}
