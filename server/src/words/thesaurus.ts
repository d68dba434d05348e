import { asciiOf, openSections, type Sections } from '../phonics/sections.ts';
import { type HandReplacements, readHandReplacements } from './hand-replacements.ts';
import { type IrregularForms, readIrregularForms } from './irregular-forms.ts';
import {
  blockSize,
  closenessSteps,
  followBits,
  type PartOfSpeech,
  partsOfSpeech,
} from './thesaurus-format.ts';

/** A word that can stand for another. */
export interface Kin {
  /** Its base form. */
  readonly word: string;
  /** Above 0, at most 1. */
  readonly closeness: number;
  /** For a verb of WordNet, what may follow in the meaning that is shared; nothing is known of other words. */
  readonly follows?: { readonly object: boolean; readonly nothing: boolean; readonly place: boolean };
}

/** Which words can stand for which. Base forms in lower case. Pure and safe to share. */
export interface Thesaurus {
  /** How much of a word's use is in each part of speech, 0 to 1; undefined for a word that is not common. */
  sharesOf(word: string): Readonly<Record<PartOfSpeech, number>> | undefined;
  /** The words that come near a base form in meaning, in no order. */
  kinOf(word: string, part: PartOfSpeech): readonly Kin[];
  /** The swaps made by hand. */
  readonly byHand: HandReplacements;
  /** The forms that no ending makes. */
  readonly irregular: IrregularForms;
}

/** Opens the data file `server/generated/meanings.bin`, given as bytes, in place. Throws when it is not of this version. */
export function openThesaurus(file: Uint8Array): Thesaurus {
  const sections = openSections(file);
  const words = new WordFile(sections);
  const byHand = readHandReplacements(sections.text('replacements'));
  const irregular = readIrregularForms(sections.text('irregular-forms'));
  return {
    sharesOf: (word) => words.find(word)?.shares,
    kinOf: (word, part) => words.find(word)?.kin[part] ?? [],
    byHand,
    irregular,
  };
}

interface Found {
  readonly shares: Readonly<Record<PartOfSpeech, number>>;
  readonly kin: Readonly<Record<PartOfSpeech, readonly Kin[]>>;
}

/** How many words are remembered; a story asks for the same ones again and again. */
const mostRemembered = 2000;

class WordFile {
  readonly #bytes: Uint8Array;
  readonly #index: Uint8Array;
  readonly #targets: readonly string[];
  readonly #known = new Map<string, Found | undefined>();

  constructor(sections: Sections) {
    this.#bytes = sections.bytes('meanings');
    this.#index = sections.bytes('meanings-index');
    this.#targets = sections.text('targets').split(' ');
  }

  find(word: string): Found | undefined {
    if (this.#known.has(word)) return this.#known.get(word);
    const found = this.#search(word);
    if (this.#known.size >= mostRemembered) this.#known.clear();
    this.#known.set(word, found);
    return found;
  }

  #search(word: string): Found | undefined {
    let low = 0;
    let high = this.#index.length / 4 - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (this.#firstOf(middle) <= word) low = middle;
      else high = middle - 1;
    }
    let at = this.#offset(low);
    let current = '';
    for (let place = 0; place < blockSize && at < this.#bytes.length; place++) {
      const length = this.#byte(at + 1);
      current = current.slice(0, this.#byte(at)) + asciiOf(this.#bytes, at + 2, at + 2 + length);
      at += 2 + length;
      if (current === word) return this.#read(at + 2);
      if (current > word) return undefined;
      at += 2 + this.#byte(at) + (this.#byte(at + 1) << 8);
    }
    return undefined;
  }

  #read(start: number): Found {
    const first = this.#byte(start);
    const second = this.#byte(start + 1);
    const parts = [first >> 4, first & 15, second >> 4, second & 15];
    const shares = { noun: 0, verb: 0, adjective: 0, adverb: 0 };
    const kin: Record<PartOfSpeech, readonly Kin[]> = { noun: [], verb: [], adjective: [], adverb: [] };
    let at = start + 2;
    for (const [index, part] of partsOfSpeech.entries()) {
      const share = parts[index] ?? 0;
      if (share === 0) continue;
      shares[part] = share / 15;
      const list: Kin[] = [];
      let number = 0;
      for (let left = this.#byte(at++); left > 0; left--) {
        let step = this.#byte(at++);
        if (step === 255) {
          step = this.#byte(at) + (this.#byte(at + 1) << 8);
          at += 2;
        }
        number += step;
        const told = this.#byte(at++);
        const word = this.#targets[number];
        if (word === undefined) continue;
        const closeness = (told & 31) / closenessSteps;
        list.push(part === 'verb' ? { word, closeness, follows: followsOf(told) } : { word, closeness });
      }
      kin[part] = list;
    }
    return { shares, kin };
  }

  #byte(at: number): number {
    return this.#bytes[at] ?? 0;
  }

  #offset(block: number): number {
    const [a = 0, b = 0, c = 0, d = 0] = this.#index.subarray(block * 4, block * 4 + 4);
    return a + (b << 8) + (c << 16) + d * 0x1000000;
  }

  #firstOf(block: number): string {
    const at = this.#offset(block);
    return asciiOf(this.#bytes, at + 2, at + 2 + this.#byte(at + 1));
  }
}

function followsOf(told: number): NonNullable<Kin['follows']> {
  return {
    object: (told & followBits.object) !== 0,
    nothing: (told & followBits.nothing) !== 0,
    place: (told & followBits.place) !== 0,
  };
}
