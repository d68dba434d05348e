/** What is known of the tokens of an alignment in which each token has one letter. */
export interface TokenInventory {
  readonly letterCount: number;
  /** The letter of each token. */
  readonly letterOf: Int32Array;
  /** The vowel each token says, numbered from 1; 0 for none. */
  readonly vowelOf: Int32Array;
  /** 1 for each vowel number that is common without stress (AH, IH, ER). */
  readonly isReduced: Uint8Array;
  /** 1 for each letter that commonly says a vowel. */
  readonly isVowelLetter: Uint8Array;
}

/** A word cut into tokens of one letter each; both arrays run in the reading direction of the model that learns from it. */
export interface TokenizedWord {
  readonly letters: readonly number[];
  readonly tokens: Int32Array;
  readonly relatives: Relatives;
}

/**
 * For each letter of a word, what four words spelled alike say there: the two training words that share most of its
 * beginning, and the two that share most of its end. -1 where the letters do not agree.
 */
export type Relatives = readonly Int32Array[];

/** Mirrored relatives, for a model that reads from the end. */
export function mirrored(relatives: Relatives): Relatives {
  return relatives.map((tokens) => tokens.slice().reverse());
}

/** A letter before the word, and one behind it. */
export const beforeWord = 0;
export const behindWord = 1;
/** Letters count from here when the two borders are letters too. */
export const firstLetter = 2;

/** Looks at a word from one of its letters. One object serves for word after word; its fields tell of the last question. */
export class WordContext {
  readonly #inventory: TokenInventory;
  readonly #groups: number[] = [0];
  #letters: readonly number[] = [];
  #relatives: Relatives = [];
  #tokens: ArrayLike<number> = [];

  /** After {@link lookBack}: the vowels before, the nearest first; 0 for none. */
  readonly vowels: [number, number, number] = [0, 0, 0];
  /** After {@link lookBack}: a number for which of the last four vowels are reduced. */
  pattern = 0;
  /** After {@link relative}: its token here, and how many letters before and behind agree (0 to 3; 4 for up to the border). */
  token = -1;
  agreesBefore = 0;
  agreesBehind = 0;
  /** After {@link relative}: how many of the tokens just before are the same as the relative's, 0 to 3. */
  sameTokens = 0;

  constructor(inventory: TokenInventory) {
    this.#inventory = inventory;
  }

  /** Takes up a word; only `tokens` before the letter asked for are ever read. */
  begin(letters: readonly number[], tokens: ArrayLike<number>, relatives: Relatives): void {
    this.#letters = letters;
    this.#tokens = tokens;
    this.#relatives = relatives;
    let groups = 0;
    let wasVowel = false;
    for (let at = 0; at < letters.length; at++) {
      const isVowel = this.#inventory.isVowelLetter[letters[at] as number] === 1;
      if (isVowel && !wasVowel) groups += 1;
      wasVowel = isVowel;
      this.#groups[at] = groups;
    }
    this.#groups[letters.length] = groups;
  }

  get length(): number {
    return this.#letters.length;
  }

  /** The letter at a place, from `firstLetter` on, or a border. */
  letter(at: number): number {
    if (at < 0) return beforeWord;
    return at >= this.#letters.length ? behindWord : (this.#letters[at] as number) + firstLetter;
  }

  /** The token before a place, numbered from 1; 0 before the word. */
  tokenAt(at: number): number {
    return at < 0 ? 0 : (this.#tokens[at] as number) + 1;
  }

  /** How many runs of vowel letters begin up to this letter. */
  groupsUpTo(at: number): number {
    return this.#groups[at] as number;
  }

  /** How many runs of vowel letters begin behind this letter. */
  groupsBehind(at: number): number {
    return (this.#groups[this.#letters.length] as number) - (this.#groups[at] as number);
  }

  lookBack(at: number): void {
    const { vowelOf, isReduced } = this.#inventory;
    this.vowels.fill(0);
    this.pattern = 1;
    let found = 0;
    for (let back = at - 1; back >= 0 && found < 4; back--) {
      const vowel = vowelOf[this.#tokens[back] as number] as number;
      if (vowel === 0) continue;
      if (found < 3) this.vowels[found] = vowel;
      this.pattern = this.pattern * 3 + (isReduced[vowel] as number) + 1;
      found += 1;
    }
  }

  relative(index: number, at: number): void {
    const known = this.#relatives[index];
    this.token = known?.[at] ?? -1;
    if (known === undefined || this.token < 0) return;
    const last = this.#letters.length - 1;
    let [before, behind, same] = [0, 0, 0];
    while (before < 3 && at - before > 0 && (known[at - before - 1] as number) >= 0) before++;
    while (behind < 3 && at + behind < last && (known[at + behind + 1] as number) >= 0) behind++;
    while (same < 3 && at - same > 0 && known[at - same - 1] === (this.#tokens[at - same - 1] as number))
      same++;
    this.agreesBefore = at - before === 0 ? 4 : before;
    this.agreesBehind = at + behind === last ? 4 : behind;
    this.sameTokens = same;
  }
}
