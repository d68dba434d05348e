/** Gives features, known by a hash of 32 bits, places in an array of weights; features seen too seldom get none. */
export class FeatureTable {
  readonly #mask: number;
  readonly #shift: number;
  readonly #hashes: Int32Array;
  readonly #counts: Uint8Array;
  readonly #bases: Int32Array;
  #size = 0;
  /** How many weights the admitted features have together. */
  weightCount = 0;

  /** Room is made for about a hundred features a word; past that, new features are not taken in. */
  constructor(wordCount: number) {
    const bits = Math.min(25, Math.max(12, Math.ceil(Math.log2(wordCount * 120))));
    this.#mask = 2 ** bits - 1;
    this.#shift = 32 - bits;
    this.#hashes = new Int32Array(2 ** bits);
    this.#counts = new Uint8Array(2 ** bits);
    this.#bases = new Int32Array(2 ** bits).fill(-1);
  }

  /** Counts a feature once more. */
  count(hash: number): void {
    const slot = this.#slot(hash);
    const times = this.#counts[slot] as number;
    if (times === 0) {
      if (this.#size > this.#mask * 0.9) return;
      this.#size += 1;
      this.#hashes[slot] = hash;
    }
    this.#counts[slot] = Math.min(255, times + 1);
  }

  /** Gives a feature `width` weights, once, when it was counted often enough. */
  admit(hash: number, width: number, leastCount: number): void {
    const slot = this.#slot(hash);
    if ((this.#counts[slot] as number) < leastCount || (this.#bases[slot] as number) >= 0) return;
    this.#bases[slot] = this.weightCount;
    this.weightCount += width;
  }

  /** The place of a feature's first weight; -1 when it has none. */
  baseOf(hash: number): number {
    return this.#bases[this.#slot(hash)] as number;
  }

  #slot(hash: number): number {
    let slot = Math.imul(hash, 0x9e3779b1) >>> this.#shift;
    while (this.#counts[slot] !== 0 && this.#hashes[slot] !== hash) slot = (slot + 1) & this.#mask;
    return slot;
  }
}
