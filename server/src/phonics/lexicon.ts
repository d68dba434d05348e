import type { AlignedPart } from './align.ts';
import type { Change } from './inflection.ts';
import {
  blockSize,
  changeCodes,
  endingCodes,
  endingPartsOf,
  seamFollows,
  seamLetters,
  seamOfCompound,
  twoBytesFrom,
} from './lexicon-format.ts';
import { type Phoneme, phonemes, type Stress } from './phoneme.ts';
import type { Ending } from './reading.ts';
import { asciiOf, type Sections } from './sections.ts';

/** A pronunciation as the lexicon keeps it: parts, and the ending it was aligned with, if any. */
export interface StoredReading {
  readonly parts: readonly AlignedPart[];
  readonly inflection?: StoredInflection;
}

/** The ending of a stored reading. */
export interface StoredInflection {
  readonly ending: Ending;
  readonly change: Change;
  /** How many of the parts at the end are the ending's. */
  readonly endingParts: number;
  /** Which of the base's stored readings this one is made of. */
  readonly baseReading: number;
}

/** Parts of speech a word can be, as bits of {@link Entry.partsOfSpeech}. From WordNet. */
export const partOfSpeech = { noun: 1, verb: 2, adjective: 4, adverb: 8 } as const;

/** A word of the lexicon. */
export interface Entry {
  readonly word: string;
  /** How common it is: 0 (rare or a name) to 7 (among the commonest few hundred). */
  readonly band: number;
  /** Where it comes in lists of words to offer, from 1 to 127, the most useful last; 0 for a word that is never offered. */
  readonly usefulness: number;
  /** True when it is offered and six-year-olds know it, or the word it is a form of. */
  readonly isFamiliar: boolean;
  readonly partsOfSpeech: number;
  /** Where a compound's second half begins. */
  readonly compound?: number;
  /** The first letters of a compound's second half, of a suffix, of what follows a prefix, in their order; a few words have others. */
  readonly seams?: readonly number[];
  /** The default first. */
  readonly readings: readonly StoredReading[];
}

/** The pronouncing lexicon, searched in place in its file's bytes. */
export interface Lexicon {
  /** The word's entry; `word` in lower case with a straight apostrophe. */
  find(word: string): Entry | undefined;
  /**
   * The entries that are offered, at most so many, the most useful first, equally useful ones in the order of their letters;
   * all of them, or those whose words begin with `prefix`, in lower case with a straight apostrophe.
   */
  offered(prefix?: string, most?: number): readonly Entry[];
  /** Every entry in the order of the letters. */
  entries(): Iterable<Entry>;
}

/** Opens the lexicon of a data file in place; nothing is decoded but the list of correspondences. */
export function openLexicon(sections: Sections): Lexicon {
  return new FileLexicon(sections);
}

/** Comes after every letter of a word. */
const afterLetters = '\u007f';

/** The highest usefulness, and more places than the lexicon has words. */
const mostUseful = 127;
const placesOfRank = 2 ** 20;

const noSeams: { readonly compound?: number; readonly seams: readonly number[] } = { seams: [] };

class FileLexicon implements Lexicon {
  readonly #bytes: Uint8Array;
  readonly #index: Uint8Array;
  readonly #count: number;
  readonly #parts: readonly AlignedPart[];
  readonly #usefulness: Uint8Array;

  constructor(sections: Sections) {
    this.#bytes = sections.bytes('lexicon');
    this.#index = sections.bytes('index');
    this.#count = this.#index.length / 4;
    this.#parts = sections.text('correspondences').split('\n').map(partOf);
    this.#usefulness = sections.bytes('usefulness');
  }

  find(word: string): Entry | undefined {
    const cursor = this.#seek(word);
    return cursor.word === word ? this.#readEntry(cursor, cursor.place) : undefined;
  }

  offered(prefix = '', most = Number.POSITIVE_INFINITY): readonly Entry[] {
    if (prefix === '' && most === Number.POSITIVE_INFINITY) return this.#allOffered();
    const end = this.#seek(`${prefix}${afterLetters}`).place;
    const keys: number[] = [];
    for (let { place } = this.#seek(prefix); place < end; place++) {
      const rank = this.#rankAt(place);
      // The place below the rank keeps equals in the order of their letters.
      if (rank > 0) keys.push((mostUseful - rank) * placesOfRank + place);
    }
    const sorted = Float64Array.from(keys).sort().subarray(0, most);
    return Array.from(sorted, (key) => this.#entryAt(key % placesOfRank));
  }

  *entries(): Iterable<Entry> {
    yield* this.#read(() => true);
  }

  /** Reading all in the order of the file is quicker than looking up each. */
  #allOffered(): readonly Entry[] {
    const byRank: Entry[][] = Array.from({ length: mostUseful + 1 }, () => []);
    for (const entry of this.#read((place) => this.#rankAt(place) > 0)) byRank[entry.usefulness]?.push(entry);
    return byRank.reverse().flat();
  }

  *#read(isWanted: (place: number) => boolean): Iterable<Entry> {
    for (let block = 0; block < this.#count; block++) {
      const cursor = { at: this.#offset(block), word: '' };
      const end = this.#offset(block + 1);
      for (let place = block * blockSize; cursor.at < end; place++) {
        this.#readWord(cursor);
        if (isWanted(place)) yield this.#readEntry(cursor, place);
        else this.#skip(cursor);
      }
    }
  }

  /** The usefulness of the word at a place. */
  #rankAt(place: number): number {
    return (this.#usefulness[place] ?? 0) >> 1;
  }

  #entryAt(place: number): Entry {
    const cursor = { at: this.#offset(Math.floor(place / blockSize)), word: '' };
    for (let left = place % blockSize; left > 0; left--) {
      this.#readWord(cursor);
      this.#skip(cursor);
    }
    this.#readWord(cursor);
    return this.#readEntry(cursor, place);
  }

  /** Behind the letters of the first word that is not before `word`; where its block has none, at the place after the block. */
  #seek(word: string): { at: number; word: string; place: number } {
    const block = this.#blockOf(word);
    const cursor = { at: this.#offset(block), word: '', place: block * blockSize };
    const end = this.#offset(block + 1);
    for (; cursor.at < end; cursor.place++) {
      this.#readWord(cursor);
      if (cursor.word >= word) break;
      this.#skip(cursor);
    }
    return cursor;
  }

  /** The last block whose first word is not past `word`. */
  #blockOf(word: string): number {
    let low = 0;
    let high = this.#count - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (this.#compareFirst(middle, word) <= 0) low = middle;
      else high = middle - 1;
    }
    return low;
  }

  #byte(at: number): number {
    return this.#bytes[at] ?? 0;
  }

  /** Where a block begins; the end of the last for one more. */
  #offset(block: number): number {
    if (block >= this.#count) return this.#bytes.length;
    const [a = 0, b = 0, c = 0, d = 0] = this.#index.subarray(block * 4, block * 4 + 4);
    return a + (b << 8) + (c << 16) + d * 0x1000000;
  }

  #compareFirst(block: number, word: string): number {
    const at = this.#offset(block);
    const length = this.#byte(at + 1);
    for (let index = 0; index < length && index < word.length; index++) {
      const difference = this.#byte(at + 2 + index) - word.charCodeAt(index);
      if (difference !== 0) return difference;
    }
    return length - word.length;
  }

  #readWord(cursor: { at: number; word: string }): void {
    const shared = this.#byte(cursor.at);
    const length = this.#byte(cursor.at + 1);
    cursor.word = cursor.word.slice(0, shared) + asciiOf(this.#bytes, cursor.at + 2, cursor.at + 2 + length);
    cursor.at += 2 + length;
  }

  /** Each entry's readings are preceded by their length in bytes, so that a search steps over them. */
  #skip(cursor: { at: number }): void {
    cursor.at += 2 + this.#byte(cursor.at) + (this.#byte(cursor.at + 1) << 8);
  }

  #readEntry(cursor: { at: number; word: string }, place: number): Entry {
    const end = cursor.at + 2 + this.#byte(cursor.at) + (this.#byte(cursor.at + 1) << 8);
    const flags = this.#byte(cursor.at + 2);
    cursor.at += 3;
    const { compound, seams } = (flags & 0x80) !== 0 ? this.#readSeams(cursor) : noSeams;
    const readings: StoredReading[] = [];
    while (cursor.at < end) readings.push(this.#readReading(cursor));
    const entry = {
      word: cursor.word,
      band: flags & 7,
      usefulness: this.#rankAt(place),
      isFamiliar: ((this.#usefulness[place] ?? 0) & 1) === 1,
      partsOfSpeech: (flags >> 3) & 15,
      readings,
    };
    if (seams.length === 0) return entry;
    return compound === undefined ? { ...entry, seams } : { ...entry, compound, seams };
  }

  #readSeams(cursor: { at: number }): { readonly compound?: number; readonly seams: readonly number[] } {
    const seams: number[] = [];
    let compound: number | undefined;
    for (let hasMore = true; hasMore; ) {
      const byte = this.#byte(cursor.at++);
      const at = byte & seamLetters;
      if (byte & seamOfCompound) compound ??= at;
      seams.push(at);
      hasMore = (byte & seamFollows) !== 0;
    }
    return compound === undefined ? { seams } : { compound, seams };
  }

  #readReading(cursor: { at: number }): StoredReading {
    const head = this.#byte(cursor.at++);
    const inflection = head & 0x80 ? this.#readInflection(cursor) : undefined;
    const parts: AlignedPart[] = [];
    for (let left = head & 0x7f; left > 0; left--) {
      let code = this.#byte(cursor.at++);
      if (code >= twoBytesFrom) code = twoBytesFrom + ((code & 0x3f) << 8) + this.#byte(cursor.at++);
      const part = this.#parts[code];
      if (part) parts.push(part);
    }
    return inflection ? { parts, inflection } : { parts };
  }

  #readInflection(cursor: { at: number }): StoredInflection {
    const how = this.#byte(cursor.at++);
    const baseReading = this.#byte(cursor.at++);
    const code = endingCodes[how & 31] ?? 's';
    return {
      ending: code === 'd' ? 'ed' : code === "'t" ? "n't" : code,
      change: changeCodes[how >> 5] ?? 'none',
      endingParts: endingPartsOf(code),
      baseReading,
    };
  }
}

const known: ReadonlySet<string> = new Set(phonemes);

function partOf(text: string): AlignedPart {
  const [letters = '', sounds = '', stress = ''] = text.split('\t');
  const list = sounds.split(' ').filter((sound): sound is Phoneme => known.has(sound));
  return stress === ''
    ? { letters, sounds: list }
    : { letters, sounds: list, stress: Number(stress) as Stress };
}
