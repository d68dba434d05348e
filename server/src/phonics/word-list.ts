import { baseOf } from './inflected-reading.ts';
import type { Entry, Lexicon, StoredReading } from './lexicon.ts';
import { isVowel } from './phoneme.ts';
import type { Ending } from './reading.ts';
import { rowsOf } from './table.ts';
import { readUnfitWords } from './unfit-words.ts';

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
  /** The words that begin with some letters, the most useful first; any capitals. */
  startingWith(prefix: string): readonly ListedWord[];
  /** One word; undefined when it is not in the lexicon or never offered. Any capitals. */
  find(word: string): ListedWord | undefined;
  /** Why a word is never offered for a six-year-old's text, from `server/data/unfit-words.tsv`; most are not there. */
  unfitFor(word: string): string | undefined;
  /** The subjects under which `server/data/young-words.tsv` has a word, as the table names them; most words have none. */
  subjectsOf(word: string): readonly string[];
}

/** The tables of `server/data` that say which words to offer. */
export interface WordListTables {
  readonly unfitWords: string;
  readonly youngWords: string;
}

/** Makes the list of a lexicon; the tables are read at once. */
export function createWordList(lexicon: Lexicon, tables: WordListTables): WordList {
  const unfit = readUnfitWords(tables.unfitWords);
  const { young, small, daily, subjects } = readYoungWords(tables.youngWords);
  let all: readonly ListedWord[] | undefined;
  /** Ranked once a letter: what is typed next only narrows it. */
  const byFirstLetter = new Map<string, readonly ListedWord[]>();

  /** The word itself, then what it is a form of, and what that is a form of: *bakers*, *baker*, *bake*. */
  const familyOf = (entry: Entry): readonly string[] => {
    const words = [entry.word];
    let inflection = inflectionOf(entry);
    while (inflection !== undefined && words.length < 4) {
      words.push(inflection.base);
      const next = lexicon.find(inflection.base);
      inflection = next && inflectionOf(next);
    }
    return words;
  };
  const reasonFor = (entry: Entry, family: readonly string[]): string | undefined => {
    for (const word of family) {
      if (young.has(word)) return undefined;
      const reason =
        unfit.reasonFor(word) ?? reasonInHalves(word === entry.word ? entry : lexicon.find(word));
      if (reason !== undefined) return reason;
    }
    return undefined;
  };
  /** A compound is unfit when a half of it is. */
  const reasonInHalves = (entry: Entry | undefined): string | undefined => {
    if (entry?.compound === undefined) return undefined;
    const { word, compound } = entry;
    return unfit.reasonForHalf(word.slice(0, compound)) ?? unfit.reasonForHalf(word.slice(compound));
  };
  const listed = (entry: Entry): ListedWord | undefined => {
    const { word, band, partsOfSpeech, readings } = entry;
    if (!isWord(entry)) return undefined;
    const family = familyOf(entry);
    const isFamiliar = family.some((each) => young.has(each));
    if (!isFamiliar && band === 0) return undefined;
    const inflection = inflectionOf(entry);
    // Neither a part of speech nor a form: a name, a fragment, a foreign word. The small words of grammar are familiar.
    if (!isFamiliar && partsOfSpeech === 0 && inflection === undefined) return undefined;
    if (reasonFor(entry, family) !== undefined) return undefined;
    return {
      word,
      band,
      partsOfSpeech,
      isFamiliar,
      ...(inflection === undefined ? {} : { inflection }),
      ...(entry.compound === undefined
        ? {}
        : { compound: [word.slice(0, entry.compound), word.slice(entry.compound)] as const }),
      readings,
    };
  };
  const mayBeListed = (word: string, band: number): boolean => band > 0 || young.has(word) || isForm(word);

  const ranked = (entries: Iterable<Entry>): readonly ListedWord[] => {
    const words: { word: ListedWord; usefulness: number }[] = [];
    for (const entry of entries) {
      const word = listed(entry);
      if (word === undefined) continue;
      const kind = { isSmall: small.has(entry.word), isDaily: daily.has(entry.word) };
      words.push({ word, usefulness: usefulnessOf(word, entry.commonness, kind) });
    }
    // Stable: words that are equally useful stay in the order of their letters.
    return words.sort((left, right) => right.usefulness - left.usefulness).map(({ word }) => word);
  };

  return {
    all: () => {
      all ??= ranked(lexicon.entries(mayBeListed));
      return all;
    },
    startingWith: (prefix) => {
      const letters = folded(prefix);
      const first = letters.charAt(0);
      let known = byFirstLetter.get(first);
      if (known === undefined) {
        known = ranked(lexicon.startingWith(first));
        byFirstLetter.set(first, known);
      }
      return known.filter(({ word }) => word.startsWith(letters));
    },
    find: (word) => {
      const entry = lexicon.find(folded(word));
      return entry && listed(entry);
    },
    unfitFor: (word) => {
      const entry = lexicon.find(folded(word));
      return entry === undefined ? unfit.reasonFor(folded(word)) : reasonFor(entry, familyOf(entry));
    },
    subjectsOf: (word) => subjects.get(folded(word)) ?? [],
  };
}

/**
 * How useful a word is in a text for beginners. Words of every day come first, then words children know, then words
 * common in print; short before long, one syllable before several, base words before their forms, and the small words of grammar, of which no
 * list is needed, a little later. The weights are our own, set by looking at the lists of the sample sequence.
 */
function usefulnessOf(
  { isFamiliar, inflection, readings }: ListedWord,
  commonness: number,
  { isSmall, isDaily }: { readonly isSmall: boolean; readonly isDaily: boolean },
): number {
  const parts = readings[0]?.parts ?? [];
  const syllables = parts.reduce((sum, { sounds }) => sum + (sounds.some(isVowel) ? 1 : 0), 0);
  return (
    commonness / 2 +
    (isFamiliar ? 8 : 0) +
    (isDaily ? 8 : 0) -
    (isSmall ? 3 : 0) -
    (inflection === undefined ? 0 : 10) -
    Math.max(0, parts.length - 3) -
    2 * Math.max(0, syllables - 1)
  );
}

function inflectionOf({ word, readings }: Entry): ListedWord['inflection'] {
  const first = readings[0];
  if (first?.inflection === undefined) return undefined;
  return { ending: first.inflection.ending, base: baseOf(word, first.parts, first.inflection) };
}

/** One letter is a letter's name, but for *a* and *I*; of words with an apostrophe only those with n't are worth a list. */
function isWord({ word, readings }: Entry): boolean {
  if (word.includes("'")) return readings[0]?.inflection?.ending === "n't";
  return word.length > 1 || word === 'a' || word === 'i';
}

/** A form of a word that children know may itself be rare: *yaps*, *tugging*. */
function isForm(word: string): boolean {
  return /(s|ed|ing|er|est|y)$/.test(word);
}

/** The words children know, by the two subjects that the order of lists asks for. */
interface YoungWords {
  readonly young: ReadonlySet<string>;
  readonly small: ReadonlySet<string>;
  readonly daily: ReadonlySet<string>;
  readonly subjects: ReadonlyMap<string, readonly string[]>;
}

function readYoungWords(table: string): YoungWords {
  const subjects = rowsOf(table, ['subject', 'words']).map(({ subject, words }) => ({
    subject,
    words: words.split(' '),
  }));
  const of = (name: string): ReadonlySet<string> =>
    new Set(subjects.flatMap(({ subject, words }) => (subject === name ? words : [])));
  const bySubject = new Map<string, string[]>();
  for (const { subject, words } of subjects)
    for (const word of words) bySubject.set(word, [...(bySubject.get(word) ?? []), subject]);
  return {
    subjects: bySubject,
    young: new Set(subjects.flatMap(({ words }) => words)),
    small: of('small words'),
    daily: of('every day'),
  };
}

function folded(word: string): string {
  return word.toLowerCase().replaceAll('\u2019', "'");
}
