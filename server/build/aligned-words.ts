import { type AlignedPart, createAligner, type Sound } from '../src/phonics/align.ts';
import { baseOf } from '../src/phonics/inflected-reading.ts';
import { readInventory } from '../src/phonics/inventory.ts';
import type { Entry, StoredReading } from '../src/phonics/lexicon.ts';
import { isVowel } from '../src/phonics/phoneme.ts';
import { rowsOf } from '../src/phonics/table.ts';
import { createWordOffers, type WordFacts } from '../src/phonics/word-offers.ts';
import {
  bandOf,
  brownCounts,
  commonnessOf,
  fictionCounts,
  fWords,
  partsOfSpeech,
  pronunciations,
  scowlSizes,
  soundsOf,
  tableText,
} from './sources.ts';
import { type Border, type BuiltWord, buildWord, type WordKnowledge } from './word-structure.ts';

/** The dictionary aligned, with what could not be. */
export interface AlignedDictionary {
  readonly entries: readonly Entry[];
  /** `word pronunciation` of each that the inventory cannot lay along its letters. */
  readonly failures: readonly string[];
}

/** Aligns every pronunciation of the dictionary, finds endings and compounds, and adds bands and parts of speech. */
export function alignDictionary(words: Pronunciations = pronunciations()): AlignedDictionary {
  const counts = brownCounts();
  const divisions = new Map(
    rowsOf(tableText('divisions'), ['word', 'divided']).map((row) => [row.word, row.divided]),
  );
  const knowledge: WordKnowledge = {
    words,
    align: createAligner(readInventory(tableText('spellings'))),
    partsOfSpeech: partsOfSpeech(),
    sizes: scowlSizes(),
    notEndings: new Set(rowsOf(tableText('not-endings'), ['word']).map((row) => row.word)),
    fWords: fWords(),
  };
  const fiction = fictionCounts();
  const found: { readonly facts: WordFacts; readonly commonness: number }[] = [];
  const failures: string[] = [];
  for (const [word, list] of words) {
    const readings: StoredReading[] = [];
    let borders: readonly Border[] | undefined;
    for (const pronunciation of list) {
      const sounds = withoutWeakL(word, withoutWeakStress(soundsOf(pronunciation)));
      const built = buildWord(word, sounds, knowledge);
      borders ??= built?.borders;
      const reading = built ? readingOf(built) : readWhole(word, sounds, words);
      if (reading) readings.push(reading);
      else failures.push(`${word}\t${pronunciation}`);
    }
    if (readings.length === 0) continue;
    const facts = {
      word,
      band: bandOf(counts.get(word) ?? 0, knowledge.sizes.get(word)),
      partsOfSpeech: knowledge.partsOfSpeech.get(word) ?? 0,
      ...seamsOf(divided(word, readings[0], divisions), borders ?? []),
      readings,
    };
    const commonness = commonnessOf((counts.get(word) ?? 0) + 3 * (fiction.get(word) ?? 0));
    found.push({ facts, commonness });
  }
  const byWord = new Map(found.map(({ facts }) => [facts.word, facts]));
  const { offerOf } = createWordOffers((word) => byWord.get(word), {
    unfitWords: tableText('unfit-words'),
    youngWords: tableText('young-words'),
  });
  const entries = found.map(({ facts, commonness }): Entry => {
    const { usefulness, isFamiliar } = offerOf(facts, commonness) ?? { usefulness: 0, isFamiliar: false };
    return { ...facts, usefulness, isFamiliar };
  });
  return { entries, failures };
}

/** Pronunciations by word, the default first. */
export type Pronunciations = ReadonlyMap<string, readonly string[]>;

/** The division written by hand of a word, or of the word it is a form of. */
function divided(
  word: string,
  reading: StoredReading | undefined,
  divisions: ReadonlyMap<string, string>,
): string | undefined {
  const own = divisions.get(word);
  if (own !== undefined || !reading?.inflection) return own;
  return divisions.get(baseOf(word, reading.parts, reading.inflection));
}

function readingOf({ parts, inflection }: BuiltWord): StoredReading {
  return inflection ? { parts, inflection } : { parts };
}

/** The seams of a word: those written by hand, else those of the pieces its first reading is built of. */
function seamsOf(divided: string | undefined, borders: readonly Border[]): Pick<Entry, 'compound' | 'seams'> {
  const compound = borders.find(({ kind }) => kind === 'compound')?.letter;
  const seams = divided === undefined ? borders.map(({ letter }) => letter) : seamsIn(divided);
  if (seams.length === 0) return {};
  return compound === undefined || !seams.includes(compound) ? { seams } : { compound, seams };
}

function seamsIn(divided: string): readonly number[] {
  const syllables = divided.split('-').slice(0, -1);
  return syllables.map((_, index) => syllables.slice(0, index + 1).join('').length);
}

/**
 * The weak vowel of a first syllable right before the stressed one (*de-cide*, *be-gin*) has stress 2 in some entries and 0
 * in others: it is 0.
 */
function withoutWeakStress(sounds: readonly Sound[]): readonly Sound[] {
  const vowelPlaces = sounds.flatMap((sound, index) => (isVowel(sound.phoneme) ? [index] : []));
  const [first, second] = vowelPlaces.map((place) => sounds[place]);
  const isWeak =
    first?.stress === 2 && second?.stress === 1 && (first.phoneme === 'IH' || first.phoneme === 'AH');
  const isOpen =
    vowelPlaces[1] !== undefined && vowelPlaces[0] !== undefined && vowelPlaces[1] - vowelPlaces[0] <= 2;
  return isWeak && isOpen
    ? sounds.map((sound) => (sound === first ? { ...sound, stress: 0 } : sound))
    : sounds;
}

/** A word the letters say nothing of (Mr., lb.) is one part. */
function readWhole(word: string, sounds: readonly Sound[], words: Pronunciations): StoredReading | undefined {
  return wholeWords.has(word) && words.has(word) ? { parts: [whole(word, sounds)] } : undefined;
}

/** *juggling* and *wiggly* have a weak vowel before l in some entries, *handling* and *simply* none: two syllables for all. */
function withoutWeakL(word: string, sounds: readonly Sound[]): readonly Sound[] {
  const ending = /[bcdfgkpstz]l(ing|y|er|ish)$/.exec(word)?.[1];
  const at = sounds.length - (ending === 'ing' || ending === 'ish' ? 4 : 3);
  const isWeak = sounds[at]?.phoneme === 'AH' && sounds[at]?.stress === 0 && sounds[at + 1]?.phoneme === 'L';
  return ending !== undefined && isWeak ? sounds.filter((_, index) => index !== at) : sounds;
}

function whole(word: string, sounds: readonly Sound[]): AlignedPart {
  return { letters: word, sounds: sounds.map((sound) => sound.phoneme), stress: 1 };
}

const wholeWords: ReadonlySet<string> = new Set([
  'mr',
  'mrs',
  'ms',
  'dr',
  'st',
  'jr',
  'sr',
  'ave',
  'oct',
  'etc',
  'hmm',
  'mm',
  'shh',
  'brr',
  'grr',
  'psst',
]);
