import { firstLetter, type TokenInventory, type WordContext } from './word-context.ts';

/** No letter has more inputs than this. */
export const mostInputs = 80;

/** Names what the network sees of a letter, as numbers of rows that are added up: each is one value of one question. */
export class NetworkInputs {
  /** How many rows there are. */
  readonly count: number;
  readonly #starts: readonly number[];
  readonly #letters: number;

  constructor(inventory: TokenInventory) {
    const letters = inventory.letterCount + firstLetter;
    const tokens = inventory.letterOf.length + 1;
    const vowels = inventory.isReduced.length;
    const sizes = [
      ...new Array<number>(17).fill(letters), // eight letters to either side
      ...new Array<number>(5).fill(tokens), // the tokens before
      ...new Array<number>(3).fill(vowels), // the vowels before
      250 * 5, // which of those are reduced, and how much is to come
      36, // syllables before and behind, roughly
      20, // length
      ...new Array<number>(8).fill(letters), // the last five letters and the first three
      ...new Array<number>(4).fill(tokens), // what the relatives say
      ...new Array<number>(4).fill(125), // how well they agree
      letters * letters, // pairs of letters
      letters * letters,
    ];
    let count = 0;
    this.#starts = sizes.map((size) => {
      const start = count;
      count += size;
      return start;
    });
    this.count = count;
    this.#letters = letters;
  }

  /** Writes the rows of the letter at a place and gives their number. */
  write(word: WordContext, at: number, rows: Int32Array): number {
    const starts = this.#starts;
    let [count, question] = [0, 0];
    const add = (value: number): void => {
      rows[count++] = (starts[question++] as number) + value;
    };
    for (let offset = -8; offset <= 8; offset++) {
      if (at + offset < -1 || at + offset > word.length) question++;
      else add(word.letter(at + offset));
    }
    for (let back = 1; back <= 5; back++) {
      if (at - back < -1) question++;
      else add(word.tokenAt(at - back));
    }
    word.lookBack(at);
    for (const vowel of word.vowels) {
      if (vowel === 0) question++;
      else add(vowel);
    }
    add(Math.min(249, word.pattern) * 5 + Math.min(4, word.groupsBehind(at)));
    add(Math.min(5, word.groupsUpTo(at)) * 6 + Math.min(5, word.groupsBehind(at)));
    add(Math.min(19, word.length));
    for (let back = 1; back <= 5; back++) add(word.letter(word.length - back));
    for (let index = 0; index < 3; index++) add(word.letter(index));
    for (let index = 0; index < 4; index++, question++) {
      word.relative(index, at);
      rows[count++] = (starts[question] as number) + word.token + 1;
      if (word.token < 0) continue;
      rows[count++] =
        (starts[question + 4] as number) + word.agreesBefore * 25 + word.agreesBehind * 5 + word.sameTokens;
    }
    question += 4;
    add(word.letter(at - 1) * this.#letters + word.letter(at));
    add(word.letter(at) * this.#letters + word.letter(at + 1));
    return count;
  }
}
