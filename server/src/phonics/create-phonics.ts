import type { AlignedPart } from './align.ts';
import { readComposed } from './composed-words.ts';
import { type FoldedLetters, folded, unstretched } from './folded-letters.ts';
import { readHeteronyms } from './heteronyms.ts';
import { baseOf, seamsOf } from './inflected-reading.ts';
import { type Correspondence, readInventory } from './inventory.ts';
import { lazily } from './lazily.ts';
import type { Entry, Lexicon, StoredReading } from './lexicon.ts';
import { longestWord, type Phonics } from './phonics.ts';
import type { Part, Reading, ReadingSource, Syllable } from './reading.ts';
import { readSoundClasses } from './sound-classes.ts';
import { placed } from './spans.ts';
import { divide, type Seams } from './syllables.ts';
import { createWordList } from './word-list.ts';
import { createWordOffers } from './word-offers.ts';

/** Reads a word that no list has, by rule: lower case letters in, parts in the order of their first letter out. */
export type Guess = (letters: string) => readonly AlignedPart[];

/** Past this many different words the cache starts afresh: a book has fewer, hostile text may have more. */
const cacheLimit = 50_000;

/**
 * Makes the phonics of a lexicon. `table` gives the text of a table of `server/data` by its name; `guess` reads what the
 * lexicon cannot, directly or by composition.
 */
export function createPhonics(lexicon: Lexicon, table: (name: string) => string, guess: Guess): Phonics {
  const soundClasses = readSoundClasses(table('sound-classes'));
  const inventory = lazily(() => readInventory(table('spellings')));
  const keyWords = lazily(() => keyWordsOf(inventory()));
  const heteronyms = lazily(() =>
    readHeteronyms({
      heteronyms: table('heteronyms'),
      rules: table('heteronym-rules'),
      classes: table('word-classes'),
    }),
  );
  const offers = lazily(() =>
    createWordOffers((word) => lexicon.find(word), {
      unfitWords: table('unfit-words'),
      youngWords: table('young-words'),
    }),
  );
  const words = new Map<string, readonly Reading[]>();
  const letters = new Map<string, readonly Reading[]>();

  function readLetters(word: string): readonly Reading[] {
    const cached = letters.get(word);
    if (cached) return cached;
    const readings = /[a-z]/.test(word) ? compute(word) : [];
    if (letters.size > cacheLimit) letters.clear();
    letters.set(word, readings);
    return readings;
  }

  function compute(word: string): readonly Reading[] {
    const entry = lexicon.find(word);
    if (entry) return entry.readings.map((stored) => fromLexicon(entry, stored, readLetters));
    const composed = readComposed(word, lexicon, readLetters);
    if (composed.length > 0) return composed;
    return [readingOf(word, 'rule', guess(word))];
  }

  const list = createWordList(lexicon, offers);

  /** The letters by which a word is looked up: its own, or of a word that is drawn out those of the word it is. */
  function knownLetters(word: string): FoldedLetters {
    const own = folded(word);
    if (lexicon.find(own.letters)) return own;
    const [double, single] = [unstretched(own, 2), unstretched(own, 1)];
    // Beeeep is beep, but soooo is so: children know no soo.
    if (double && list.find(double.letters)?.isFamiliar) return double;
    return [single, double].find((each) => each && lexicon.find(each.letters)) ?? own;
  }

  return {
    readingsOf(word) {
      if (word.length > longestWord) return [];
      const cached = words.get(word);
      if (cached) return cached;
      const { letters: plain, places, isPlain, isDrawnOut = false } = knownLetters(word);
      const readings = readLetters(plain);
      const result = isPlain
        ? readings.map((reading) => withCase(reading, word))
        : readings.map((reading) => ({
            ...moved(reading, word, places),
            ...(isDrawnOut ? { drawnOutOf: plain } : {}),
          }));
      if (words.size > cacheLimit) words.clear();
      words.set(word, result);
      return result;
    },
    isListed: (word) => lexicon.find(knownLetters(word).letters) !== undefined,
    keyWordFor(text, sounds, stress) {
      const key = `${text} ${sounds.join(' ')}`;
      const when = stress === undefined ? '' : stress === 0 ? ' unstressed' : ' stressed';
      return keyWords().get(key + when) ?? keyWords().get(key);
    },
    soundClass: soundClasses,
    commonSpellings: () => commonSpellingsIn(inventory()),
    regularPart: (text) => regularPartIn(inventory(), text),
    words: list,
    heteronyms: {
      sensesOf: (word) => heteronyms().sensesOf(word),
      choose: (sentence, at) => heteronyms().choose(sentence, at),
    },
  };
}

/** A reading from aligned parts: places and syllables worked out. */
export function readingOf(
  word: string,
  source: ReadingSource,
  aligned: readonly AlignedPart[],
  seams: Seams = {},
): Reading {
  const parts = placed(word, aligned);
  return { source, parts, syllables: divide(word, parts, seams) };
}

function fromLexicon(
  entry: Entry,
  stored: StoredReading,
  readLetters: (word: string) => readonly Reading[],
): Reading {
  const { inflection } = stored;
  if (!inflection) {
    const reading = readingOf(entry.word, 'lexicon', stored.parts, { inside: entry.seams ?? [] });
    const { compound: at, word } = entry;
    if (word.endsWith("n't")) return bentBeforeNot(word, reading);
    return at === undefined ? reading : { ...reading, compound: [word.slice(0, at), word.slice(at)] };
  }
  const reading = readingOf(entry.word, 'lexicon', stored.parts, {
    ...seamsOf(entry.word, stored.parts, inflection),
    inside: entry.seams ?? [],
  });
  const base = baseOf(entry.word, stored.parts, inflection);
  const baseReadings = readLetters(base);
  const baseReading = baseReadings[inflection.baseReading] ?? baseReadings[0];
  if (!baseReading) return reading;
  return {
    ...reading,
    inflection: {
      ending: inflection.ending,
      base,
      reading: baseReading,
      baseParts: stored.parts.length - inflection.endingParts,
    },
  };
}

/**
 * A contraction with *not* that changes the vowel of its base: *don't* is no *do* with something behind it, but a child who reads
 * d, the o of *go* and n't reads it. Its base has the sounds it has here.
 */
function bentBeforeNot(word: string, reading: Reading): Reading {
  const baseParts = reading.parts.length - 2;
  if (baseParts < 1 || reading.parts[baseParts]?.letters !== 'n') return reading;
  const base = word.slice(0, -3);
  const inner = readingOf(base, 'lexicon', reading.parts.slice(0, baseParts));
  return { ...reading, inflection: { ending: "n't", base, reading: inner, baseParts } };
}

/** What a correspondence may cost to be one that lessons teach. */
const dearestCommon = 2;

function commonSpellingsIn(
  inventory: readonly Correspondence[],
): readonly { letters: string; keyWord: string }[] {
  const found = new Map<string, { letters: string; keyWord: string; cost: number }>();
  for (const { letters, keyWord, cost } of inventory) {
    if (keyWord === undefined || cost > dearestCommon || letters.includes("'")) continue;
    const key = `${letters} ${keyWord}`;
    if (!found.has(key)) found.set(key, { letters, keyWord, cost });
  }
  return [...found.values()].sort((left, right) => left.cost - right.cost);
}

function regularPartIn(inventory: readonly Correspondence[], letters: string): AlignedPart | undefined {
  let best: Correspondence | undefined;
  for (const row of inventory) {
    if (row.letters === letters && (!best || row.cost < best.cost)) best = row;
  }
  return best && { letters: best.letters, sounds: best.sounds };
}

/** Key words by letters and sounds, and again with the stress for rows that ask for one. */
function keyWordsOf(inventory: readonly Correspondence[]): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  for (const { letters, sounds, keyWord, when } of inventory) {
    if (keyWord === undefined) continue;
    const key = `${letters} ${sounds.join(' ')}`;
    for (const each of when === 'stressed' || when === 'unstressed' ? [key, `${key} ${when}`] : [key]) {
      if (!found.has(each)) found.set(each, keyWord);
    }
  }
  return found;
}

/** The same reading with syllables in the word's own capitals; the reading itself when it has none. */
function withCase(reading: Reading, word: string): Reading {
  let at = 0;
  let changed = false;
  const syllables = reading.syllables.map((syllable) => {
    const text = word.slice(at, at + syllable.text.length);
    at += syllable.text.length;
    changed ||= text !== syllable.text;
    return { ...syllable, text };
  });
  return changed ? { ...reading, syllables } : reading;
}

/** The same reading for a word with accents or marks: spans and syllables moved to where the letters stand. */
function moved(reading: Reading, word: string, places: readonly number[]): Reading {
  const last = places[places.length - 1] ?? word.length;
  const place = (offset: number): number => (offset === 0 ? 0 : (places[offset] ?? last));
  const parts: Part[] = reading.parts.map((part) => ({
    ...part,
    spans: part.spans.map(([start, end]) => [place(start), place(end)] as const),
  }));
  let at = 0;
  const syllables: Syllable[] = reading.syllables.map((syllable) => {
    const start = place(at);
    at += syllable.text.length;
    return { ...syllable, text: word.slice(start, place(at)) };
  });
  return { ...reading, parts, syllables };
}
