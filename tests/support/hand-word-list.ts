import { baseOf } from '../../server/src/phonics/inflected-reading.ts';
import type { Entry, StoredReading } from '../../server/src/phonics/lexicon.ts';
import { changeCodes } from '../../server/src/phonics/lexicon-format.ts';
import type { Reading } from '../../server/src/phonics/reading.ts';
import { createWordList, type WordList } from '../../server/src/phonics/word-list.ts';
import { createWordOffers, type WordFacts } from '../../server/src/phonics/word-offers.ts';

/** The words to offer of a table of readings: all are common nouns, children know none, and *mud* is unfit. */
export function handWordList(readings: ReadonlyMap<string, readonly Reading[]>): WordList {
  const tables = {
    unfitWords: 'word\treason\nmud\ta test of words that are never offered\n',
    youngWords: 'subject\twords\n',
  };
  const facts = (): readonly WordFacts[] =>
    [...readings]
      .map(([word, all]) => ({
        word,
        band: 4,
        partsOfSpeech: 1,
        readings: all.map((each) => stored(word, each)),
      }))
      .sort((left, right) => (left.word < right.word ? -1 : 1));
  const offers = () => createWordOffers((word) => facts().find((each) => each.word === word), tables);
  const entries = (): readonly Entry[] => {
    const { offerOf } = offers();
    return facts().map((each) => ({
      ...each,
      ...(offerOf(each, commonness) ?? { usefulness: 0, isFamiliar: false }),
    }));
  };
  return createWordList(
    {
      find: (word) => entries().find((entry) => entry.word === word),
      entries,
      offered: (prefix = '', most) =>
        entries()
          .filter(({ word, usefulness }) => usefulness > 0 && word.startsWith(prefix))
          .sort((left, right) => right.usefulness - left.usefulness)
          .slice(0, most),
    },
    offers,
  );
}

/** Of every word of the table. */
const commonness = 10;

function stored(word: string, { parts, inflection }: Reading): StoredReading {
  if (inflection === undefined) return { parts };
  const { ending, base, baseParts } = inflection;
  const endingParts = parts.length - baseParts;
  const change = changeCodes.find(
    (each) => baseOf(word, parts, { ending, change: each, endingParts, baseReading: 0 }) === base,
  );
  return { parts, inflection: { ending, change: change ?? 'none', endingParts, baseReading: 0 } };
}
