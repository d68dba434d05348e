import { type AlignedPart, type Aligner, createAligner, type Sound } from '../src/phonics/align.ts';
import { partsOfEnding } from '../src/phonics/ending-parts.ts';
import { joins, type Split, splitsOf } from '../src/phonics/inflection.ts';
import { readInventory } from '../src/phonics/inventory.ts';
import type { Entry, StoredReading } from '../src/phonics/lexicon.ts';
import { endingPartsOf } from '../src/phonics/lexicon-format.ts';
import { isVowel } from '../src/phonics/phoneme.ts';
import type { Ending } from '../src/phonics/reading.ts';
import { rowsOf } from '../src/phonics/table.ts';
import { takesEnding } from '../src/phonics/takes-ending.ts';
import {
  bandOf,
  brownCounts,
  commonnessOf,
  fictionCounts,
  partsOfSpeech,
  pronunciations,
  scowlSizes,
  soundsOf,
  tableText,
} from './sources.ts';

/** The dictionary aligned, with what could not be. */
export interface AlignedDictionary {
  readonly entries: readonly Entry[];
  /** `word pronunciation` of each that the inventory cannot lay along its letters. */
  readonly failures: readonly string[];
}

/** Aligns every pronunciation of the dictionary, finds endings and compounds, and adds bands and parts of speech. */
export function alignDictionary(words: Pronunciations = pronunciations()): AlignedDictionary {
  const knowledge: Knowledge = {
    words,
    align: createAligner(readInventory(tableText('spellings'))),
    partsOfSpeech: partsOfSpeech(),
    sizes: scowlSizes(),
    counts: brownCounts(),
    notEndings: new Set(rowsOf(tableText('not-endings'), ['word']).map((row) => row.word)),
  };
  const fiction = fictionCounts();
  const entries: Entry[] = [];
  const failures: string[] = [];
  for (const [word, list] of words) {
    const compound = compoundOf(word, list, knowledge);
    const readings: StoredReading[] = [];
    for (const pronunciation of list) {
      const reading = read(word, withoutWeakStress(soundsOf(pronunciation)), compound, knowledge);
      if (reading) readings.push(reading);
      else failures.push(`${word}\t${pronunciation}`);
    }
    if (readings.length === 0) continue;
    const entry = {
      word,
      band: bandOf(knowledge.counts.get(word) ?? 0, knowledge.sizes.get(word)),
      commonness: commonnessOf((knowledge.counts.get(word) ?? 0) + 3 * (fiction.get(word) ?? 0)),
      partsOfSpeech: knowledge.partsOfSpeech.get(word) ?? 0,
      readings,
    };
    entries.push(compound === undefined ? entry : { ...entry, compound });
  }
  return { entries, failures };
}

/** Pronunciations by word, the default first. */
export type Pronunciations = ReadonlyMap<string, readonly string[]>;

interface Knowledge {
  readonly words: Pronunciations;
  readonly align: Aligner;
  readonly partsOfSpeech: ReadonlyMap<string, number>;
  readonly sizes: ReadonlyMap<string, number>;
  readonly counts: ReadonlyMap<string, number>;
  readonly notEndings: ReadonlySet<string>;
}

function read(
  word: string,
  sounds: readonly Sound[],
  compound: number | undefined,
  known: Knowledge,
): StoredReading | undefined {
  const inflected = known.notEndings.has(word) ? undefined : readInflected(word, sounds, known);
  if (inflected) return inflected;
  if (compound !== undefined) {
    const halves = alignHalves(word, sounds, compound, known);
    if (halves) return { parts: halves };
  }
  const alignment = known.align(word, sounds);
  if (alignment) return { parts: evened(alignment.parts) };
  // A word the letters say nothing of (Mr., lb.) is one part.
  return isReadWhole(word, known) ? { parts: [whole(word, sounds)] } : undefined;
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

/** *marry* is written with EH and *carry* with AE; most speakers have one sound: before rr the letter a is AE. */
function evened(parts: readonly AlignedPart[]): readonly AlignedPart[] {
  return parts.map((part, index) =>
    part.letters === 'a' && part.sounds[0] === 'EH' && parts[index + 1]?.letters === 'rr'
      ? { ...part, sounds: ['AE'] }
      : part,
  );
}

function whole(word: string, sounds: readonly Sound[]): AlignedPart {
  return { letters: word, sounds: sounds.map((sound) => sound.phoneme), stress: 1 };
}

const readWhole: ReadonlySet<string> = new Set([
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

function isReadWhole(word: string, known: Knowledge): boolean {
  return readWhole.has(word) && known.words.has(word);
}

function readInflected(word: string, sounds: readonly Sound[], known: Knowledge): StoredReading | undefined {
  for (const split of splitsOf(word)) {
    const readings = known.words.get(split.base);
    if (!readings || !takes(split, word, known)) continue;
    for (const [baseReading, pronunciation] of readings.entries()) {
      const joined = joins(soundsOf(pronunciation), split, sounds);
      if (!joined) continue;
      const reading = alignInflected(word, sounds, split, joined.baseSounds, baseReading, known);
      if (reading) return reading;
    }
  }
  return undefined;
}

function takes(split: Split, word: string, known: Knowledge): boolean {
  const parts = { base: known.partsOfSpeech.get(split.base) ?? 0, whole: known.partsOfSpeech.get(word) ?? 0 };
  return (split.ending.includes("'") || known.sizes.has(split.base)) && takesEnding(split, word, parts);
}

function alignInflected(
  word: string,
  sounds: readonly Sound[],
  split: Split,
  baseSounds: number,
  baseReading: number,
  known: Knowledge,
): StoredReading | undefined {
  const rest = sounds.slice(baseSounds);
  const { at, change, ending } = settle(word, split, rest);
  const base = known.align(word.slice(0, at), sounds.slice(0, baseSounds));
  if (!base) return undefined;
  const parts = partsOfEnding(
    ending,
    word.slice(at),
    rest.map((sound) => sound.phoneme),
  );
  const letters = word.slice(at);
  const code = letters === 'd' || letters === "'t" ? letters : ending;
  return {
    parts: [...evened(base.parts), ...parts],
    inflection: { ending, change, endingParts: endingPartsOf(code), baseReading },
  };
}

/**
 * Where the ending's letters begin: *horses* has es after hors, as its sound is; *freed* only d, since ee belongs
 * together; else as the split says.
 */
function settle(
  word: string,
  split: Split,
  rest: readonly Sound[],
): { ending: Ending; change: Split['change']; at: number } {
  if (split.ending === 's' && split.base.endsWith('e') && rest.length === 2) {
    return { ending: 'es', change: split.change === 'f to v' ? 'f to v' : 'dropped e', at: word.length - 2 };
  }
  if (split.ending === 'ed' && split.change === 'dropped e' && /[eouiy]e$/.test(split.base)) {
    return { ending: 'ed', change: 'none', at: word.length - 1 };
  }
  return split;
}

/** The first letter of a compound's second half: two words of three letters or more whose sounds make up the whole. */
function compoundOf(word: string, list: readonly string[], known: Knowledge): number | undefined {
  const first = list[0];
  if (!first || word.length < 6 || word.includes("'") || !known.sizes.has(word)) return undefined;
  const sounds = plain(soundsOf(first));
  for (let at = 3; at <= word.length - 3; at++) {
    const left = halfOf(word.slice(0, at), known);
    const right = halfOf(word.slice(at), known);
    if (!left || !right) continue;
    if (
      `${plain(soundsOf(left))} ${plain(soundsOf(right))}` === sounds &&
      hasStress(first, soundsOf(left).length)
    )
      return at;
  }
  return undefined;
}

function halfOf(half: string, known: Knowledge): string | undefined {
  return (known.sizes.get(half) ?? 99) <= 50 ? known.words.get(half)?.[0] : undefined;
}

/** Both halves of a compound keep some stress: *sunset*, not *button*. */
function hasStress(pronunciation: string, from: number): boolean {
  const sounds = soundsOf(pronunciation);
  return (
    sounds.slice(from).some((sound) => (sound.stress ?? 0) > 0) &&
    sounds.slice(0, from).some((sound) => (sound.stress ?? 0) > 0)
  );
}

function plain(sounds: readonly Sound[]): string {
  return sounds.map((sound) => (sound.phoneme === 'AO' ? 'AA' : sound.phoneme)).join(' ');
}

function alignHalves(
  word: string,
  sounds: readonly Sound[],
  at: number,
  known: Knowledge,
): readonly AlignedPart[] | undefined {
  const left = known.words.get(word.slice(0, at))?.[0];
  if (!left) return undefined;
  const count = soundsOf(left).length;
  const first = known.align(word.slice(0, at), sounds.slice(0, count));
  const second = known.align(word.slice(at), sounds.slice(count));
  return first && second ? [...first.parts, ...second.parts] : undefined;
}
