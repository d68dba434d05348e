import { baseOf } from './inflected-reading.ts';
import type { Entry } from './lexicon.ts';
import { isVowel } from './phoneme.ts';
import type { Ending } from './reading.ts';
import { rowsOf } from './table.ts';
import { readUnfitWords } from './unfit-words.ts';

/** A word of the lexicon before it is said whether and where it comes in lists. */
export type WordFacts = Omit<Entry, 'usefulness' | 'isFamiliar'>;

/** The tables of `server/data` that say which words to offer. */
export interface OfferTables {
  readonly unfitWords: string;
  readonly youngWords: string;
}

/** Which words may be offered to somebody who writes for children, and how soon. */
export interface WordOffers {
  /**
   * How useful a word is in a text for beginners, in whole steps above 0, and whether six-year-olds know it; nothing for a
   * word that is never offered.
   *
   * @param commonness how common the word is in talk, in steps of one half more each.
   */
  offerOf(facts: WordFacts, commonness: number): Pick<Entry, 'usefulness' | 'isFamiliar'> | undefined;
  /** Why a word is never offered for a six-year-old's text; the word is named when the lexicon does not have it. */
  unfitFor(word: string, facts: WordFacts | undefined): string | undefined;
  /** The subjects under which the table of young words has a word, in lower case. */
  subjectsOf(word: string): readonly string[];
}

/** The rules of offering words; the tables are read at once. `find` gives the lexicon's word, in lower case. */
export function createWordOffers(
  find: (word: string) => WordFacts | undefined,
  tables: OfferTables,
): WordOffers {
  const unfit = readUnfitWords(tables.unfitWords);
  const { young, small, daily, subjects } = readYoungWords(tables.youngWords);

  /** The word itself, then what it is a form of, and what that is a form of: *bakers*, *baker*, *bake*. */
  const familyOf = (facts: WordFacts): readonly string[] => {
    const words = [facts.word];
    let inflection = inflectionOf(facts);
    while (inflection !== undefined && words.length < 4) {
      words.push(inflection.base);
      const next = find(inflection.base);
      inflection = next && inflectionOf(next);
    }
    return words;
  };
  const reasonFor = (facts: WordFacts, family: readonly string[]): string | undefined => {
    for (const word of family) {
      if (young.has(word)) return undefined;
      const reason = unfit.reasonFor(word) ?? reasonInHalves(word === facts.word ? facts : find(word));
      if (reason !== undefined) return reason;
    }
    return undefined;
  };
  /** A compound is unfit when a half of it is. */
  const reasonInHalves = (facts: WordFacts | undefined): string | undefined => {
    if (facts?.compound === undefined) return undefined;
    const { word, compound } = facts;
    return unfit.reasonForHalf(word.slice(0, compound)) ?? unfit.reasonForHalf(word.slice(compound));
  };

  return {
    offerOf: (facts, commonness) => {
      if (!isWord(facts)) return undefined;
      const { word, band, partsOfSpeech } = facts;
      const family = familyOf(facts);
      const isFamiliar = family.some((each) => young.has(each));
      if (!isFamiliar && band === 0) return undefined;
      // Neither a part of speech nor a form: a name, a fragment, a foreign word. The small words of grammar are familiar.
      if (!isFamiliar && partsOfSpeech === 0 && inflectionOf(facts) === undefined) return undefined;
      if (reasonFor(facts, family) !== undefined) return undefined;
      const kind = { isFamiliar, isSmall: small.has(word), isDaily: daily.has(word) };
      return { isFamiliar, usefulness: usefulnessOf(facts, commonness, kind) };
    },
    unfitFor: (word, facts) =>
      facts === undefined ? unfit.reasonFor(word) : reasonFor(facts, familyOf(facts)),
    subjectsOf: (word) => subjects.get(word) ?? [],
  };
}

/** What a word is a form of, by its likeliest reading. */
export function inflectionOf({
  word,
  readings,
}: WordFacts): { readonly ending: Ending; readonly base: string } | undefined {
  const first = readings[0];
  if (first?.inflection === undefined) return undefined;
  return { ending: first.inflection.ending, base: baseOf(word, first.parts, first.inflection) };
}

/** Above what the least useful word has below nothing, in half steps. */
const leastUsefulness = 60;

/**
 * Words of every day come first, then words children know, then words common in print; short before long, one syllable
 * before several, base words before their forms, and the small words of grammar, of which no list is needed, a little later.
 * The weights are our own, set by looking at the lists of the sample sequence.
 */
function usefulnessOf(
  facts: WordFacts,
  commonness: number,
  { isFamiliar, isSmall, isDaily }: Readonly<Record<'isFamiliar' | 'isSmall' | 'isDaily', boolean>>,
): number {
  const parts = facts.readings[0]?.parts ?? [];
  const syllables = parts.reduce((sum, { sounds }) => sum + (sounds.some(isVowel) ? 1 : 0), 0);
  const steps =
    commonness / 2 +
    (isFamiliar ? 8 : 0) +
    (isDaily ? 8 : 0) -
    (isSmall ? 3 : 0) -
    (inflectionOf(facts) === undefined ? 0 : 10) -
    Math.max(0, parts.length - 3) -
    2 * Math.max(0, syllables - 1);
  return Math.max(1, 2 * steps + leastUsefulness);
}

/** One letter is a letter's name, but for *a* and *I*; of words with an apostrophe only those with n't are worth a list. */
function isWord({ word, readings }: WordFacts): boolean {
  if (word.includes("'")) return readings[0]?.inflection?.ending === "n't";
  return word.length > 1 || word === 'a' || word === 'i';
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
