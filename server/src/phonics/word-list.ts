import type { Entry, Lexicon, StoredReading } from './lexicon.ts';
import type { Ending } from './reading.ts';
import { inflectionOf, type WordOffers } from './word-offers.ts';

/** A word that may be offered to somebody who writes for children. */
export interface ListedWord {
  /** In lower case, with a straight apostrophe. */
  readonly word: string;
  /** How common it is among grown-ups, 0 (rare) to 7. */
  readonly band: number;
  /** Bits of `partOfSpeech`; none for *the*, *of* and for forms that WordNet does not list. */
  readonly partsOfSpeech: number;
  /** True when six-year-olds know it, or the word it is a form of: `server/data/young-words.tsv`. */
  readonly isFamiliar: boolean;
  /** What it is a form of, by its likeliest reading. */
  readonly inflection?: { readonly ending: Ending; readonly base: string };
  /** The two words it is put together from. */
  readonly compound?: readonly [string, string];
  /** As the lexicon keeps them, the likeliest first; none for a word that the lexicon does not have. */
  readonly readings: readonly StoredReading[];
}

/** The lexicon as a source of words to offer. Names, abbreviations, letters and unfit words are not in it. */
export interface WordList {
  /** All words, the most useful to somebody who writes for beginners first. Made when it is first asked for, and kept. */
  all(): readonly ListedWord[];
  /** The words that begin with some letters, at most so many, the most useful first; any capitals. */
  startingWith(prefix: string, most?: number): readonly ListedWord[];
  /** One word; undefined when it is not in the lexicon or never offered. Any capitals. */
  find(word: string): ListedWord | undefined;
  /** Why a word is never offered for a six-year-old's text, from `server/data/unfit-words.tsv`; most are not there. */
  unfitFor(word: string): string | undefined;
  /** The subjects under which `server/data/young-words.tsv` has a word, as the table names them; most words have none. */
  subjectsOf(word: string): readonly string[];
}

/** Makes the list of a lexicon, which says itself what is offered; `offers` is asked for only what the lexicon does not say. */
export function createWordList(lexicon: Lexicon, offers: () => WordOffers): WordList {
  let all: readonly ListedWord[] | undefined;
  return {
    all: () => {
      all ??= lexicon.offered().map(listed);
      return all;
    },
    startingWith: (prefix, most) => lexicon.offered(folded(prefix), most).map(listed),
    find: (word) => {
      const entry = lexicon.find(folded(word));
      return entry === undefined || entry.usefulness === 0 ? undefined : listed(entry);
    },
    unfitFor: (word) => offers().unfitFor(folded(word), lexicon.find(folded(word))),
    subjectsOf: (word) => offers().subjectsOf(folded(word)),
  };
}

function listed(entry: Entry): ListedWord {
  const { word, band, partsOfSpeech, isFamiliar, compound, readings } = entry;
  const inflection = inflectionOf(entry);
  return {
    word,
    band,
    partsOfSpeech,
    isFamiliar,
    ...(inflection === undefined ? {} : { inflection }),
    ...(compound === undefined ? {} : { compound: [word.slice(0, compound), word.slice(compound)] as const }),
    readings,
  };
}

function folded(word: string): string {
  return word.toLowerCase().replaceAll('\u2019', "'");
}
