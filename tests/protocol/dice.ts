/** Choices by chance; the same numbers give the same choices. */
export class Dice {
  /** A number from 0 up to, but not with, 1. */
  readonly share: () => number;

  constructor(share: () => number) {
    this.share = share;
  }

  /** A whole number from 0 up to, but not with, `most`. */
  below(most: number): number {
    return Math.floor(this.share() * most);
  }

  /** One of a list that is not empty. */
  pick<T>(list: readonly T[]): T {
    return list[this.below(list.length)] as T;
  }

  /** True with a chance from 0 to 1. */
  isLuck(chance: number): boolean {
    return this.share() < chance;
  }
}
