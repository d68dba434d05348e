import type { AlignedPart, Aligner, Sound } from '../src/phonics/align.ts';
import { partsOfEnding } from '../src/phonics/ending-parts.ts';
import { joins, type Split, sameSounds, splitsOf } from '../src/phonics/inflection.ts';
import type { StoredInflection } from '../src/phonics/lexicon.ts';
import { endingPartsOf } from '../src/phonics/lexicon-format.ts';
import { isVowel, type Phoneme } from '../src/phonics/phoneme.ts';
import type { Ending } from '../src/phonics/reading.ts';
import { takesEnding } from '../src/phonics/takes-ending.ts';
import {
  type Affix,
  notFirstHalves,
  notSecondHalves,
  prefixes,
  shortCompounds,
  shortFirstHalves,
  suffixes,
} from './affixes.ts';
import { soundsOf } from './sources.ts';

/** What is known of the dictionary's words when one of them is taken apart. */
export interface WordKnowledge {
  /** Pronunciations by word, the default first. */
  readonly words: ReadonlyMap<string, readonly string[]>;
  readonly align: Aligner;
  /** Bits of `partOfSpeech` by word. */
  readonly partsOfSpeech: ReadonlyMap<string, number>;
  /** SCOWL sizes by word, 10 the commonest. */
  readonly sizes: ReadonlyMap<string, number>;
  /** Words that only look as if they had an ending, prefix or suffix. */
  readonly notEndings: ReadonlySet<string>;
  /** Words whose f is v in the plural, by that plural: *leaf* by *leaves*. */
  readonly fWords: ReadonlyMap<string, string>;
}

/** Where two pieces of a word meet. */
export interface Border {
  /** The first letter of the second piece. */
  readonly letter: number;
  /** How many sounds come before it. */
  readonly sound: number;
  readonly kind: 'compound' | 'affix';
}

/** A word laid along its letters piece by piece. */
export interface BuiltWord {
  readonly parts: readonly AlignedPart[];
  /** Borders of compounds, prefixes and suffixes in their order; an ending's is told by `inflection`. */
  readonly borders: readonly Border[];
  readonly inflection?: StoredInflection;
}

/**
 * Takes a word apart, an ending first, then a compound's halves, a suffix, a prefix, and each piece again; every piece is
 * aligned by itself, so that *peaceful* has the ce of *peace* and *unwanted* the ed of *wanted*. A piece counts only where
 * it is a word and sounds so. Undefined when the inventory cannot lay the sounds along the letters.
 */
export function buildWord(
  word: string,
  sounds: readonly Sound[],
  known: WordKnowledge,
): BuiltWord | undefined {
  const built = known.notEndings.has(word)
    ? compound(word, sounds, known)
    : (inflected(word, sounds, known) ?? composed(word, sounds, known));
  if (built) return built;
  const alignment = known.align(word, sounds);
  return alignment && { parts: evened(alignment.parts), borders: [] };
}

function composed(word: string, sounds: readonly Sound[], known: WordKnowledge): BuiltWord | undefined {
  return compound(word, sounds, known) ?? withSuffix(word, sounds, known) ?? withPrefix(word, sounds, known);
}

/** *marry* is written with EH and *carry* with AE; most speakers have one sound: before rr the letter a is AE. */
function evened(parts: readonly AlignedPart[]): readonly AlignedPart[] {
  return parts.map((part, index) =>
    part.letters === 'a' && part.sounds[0] === 'EH' && parts[index + 1]?.letters === 'rr'
      ? { ...part, sounds: ['AE'] }
      : part,
  );
}

function inflected(word: string, sounds: readonly Sound[], known: WordKnowledge): BuiltWord | undefined {
  for (const split of ordered(splitsOf(word), word, known)) {
    const readings = known.words.get(split.base);
    if (!readings || !takes(split, word, known)) continue;
    for (const [baseReading, pronunciation] of readings.entries()) {
      for (const variant of [sounds, voicedAsBase(sounds)]) {
        const joined = joins(soundsOf(pronunciation), split, variant);
        const base = { split, baseReading, sounds: soundsOf(pronunciation), count: joined?.baseSounds ?? 0 };
        const built = joined && alignInflected(word, variant, base, known);
        if (built) return built;
      }
    }
  }
  return undefined;
}

/** *leaves* is leaf with es before it is leave with s; *proves* is no form of a noun in f. */
function ordered(splits: readonly Split[], word: string, known: WordKnowledge): readonly Split[] {
  const fits = splits.filter(({ change, base }) => change !== 'f to v' || isFWord(base, word, known));
  return [...fits].sort(
    (left, right) => Number(right.change === 'f to v') - Number(left.change === 'f to v'),
  );
}

/** A noun whose plural has ves, or a compound that ends in one (*bookshelf*). */
function isFWord(base: string, word: string, known: WordKnowledge): boolean {
  if (known.fWords.get(word) === base) return true;
  for (let at = 3; at <= base.length - 4; at++) {
    if (known.fWords.get(word.slice(at)) === base.slice(at) && known.words.has(base.slice(0, at)))
      return true;
  }
  return false;
}

/** The dictionary has a few slips like *tramps* with Z and *yelped* with D: after a voiceless sound they are S and T. */
function voicedAsBase(sounds: readonly Sound[]): readonly Sound[] {
  const last = sounds.at(-1)?.phoneme;
  const before = sounds.at(-2)?.phoneme;
  if (!before || !/^(P|T|K|F|TH)$/.test(before) || (last !== 'Z' && last !== 'D')) return sounds;
  return [...sounds.slice(0, -1), { phoneme: last === 'Z' ? 'S' : 'T' }];
}

function takes(split: Split, word: string, known: WordKnowledge): boolean {
  const parts = { base: known.partsOfSpeech.get(split.base) ?? 0, whole: known.partsOfSpeech.get(word) ?? 0 };
  return (split.ending.includes("'") || known.sizes.has(split.base)) && takesEnding(split, word, parts);
}

interface InflectedBase {
  readonly split: Split;
  readonly baseReading: number;
  readonly sounds: readonly Sound[];
  /** How many of the whole word's sounds are the base's. */
  readonly count: number;
}

function alignInflected(
  word: string,
  sounds: readonly Sound[],
  base: InflectedBase,
  known: WordKnowledge,
): BuiltWord | undefined {
  const rest = sounds.slice(base.count);
  const { at, change, ending } = settle(word, base.split, rest);
  const stem = stemOf(word.slice(0, at), sounds.slice(0, base.count), base.split.base, base.sounds, known);
  if (!stem) return undefined;
  const letters = word.slice(at);
  const parts = partsOfEnding(
    ending,
    letters,
    rest.map((sound) => sound.phoneme),
  );
  const code = letters === 'd' || letters === "'t" ? letters : ending;
  return {
    parts: [...stem.parts, ...parts],
    // paint-er-s, open-ing-s, hur-ried-ly; charter is no chart-er in char-tered.
    borders: /^(e?s|'s|ly)$/.test(ending) ? [...stem.borders, ...endingBorder(stem)] : stem.borders,
    inflection: { ending, change, endingParts: endingPartsOf(code), baseReading: base.baseReading },
  };
}

/** A base's letters before an ending or suffix, cut like the base: whole, or between the base's borders when it changed. */
function stemOf(
  letters: string,
  sounds: readonly Sound[],
  base: string,
  baseSounds: readonly Sound[],
  known: WordKnowledge,
): BuiltWord | undefined {
  if (letters === base) return buildWord(base, sounds, known);
  const borders = (composed(base, baseSounds, known)?.borders ?? []).filter(
    ({ letter, sound }) => letter < letters.length - 1 && sound < sounds.length,
  );
  const parts: AlignedPart[] = [];
  const starts = [{ letter: 0, sound: 0 }, ...borders];
  for (const [index, { letter, sound }] of starts.entries()) {
    const next = starts[index + 1];
    const piece = letters.slice(letter, next?.letter);
    const said = sounds.slice(sound, next?.sound);
    const aligned = next ? buildWord(piece, said, known) : alignStem(piece, said, base, known);
    if (!aligned) return undefined;
    parts.push(...aligned.parts);
  }
  return { parts: evened(parts), borders };
}

/** The last piece of a stem; the r of *fir*ed stays with its vowel as in *fire*. */
function alignStem(
  piece: string,
  sounds: readonly Sound[],
  base: string,
  known: WordKnowledge,
): { readonly parts: readonly AlignedPart[] } | undefined {
  const whole =
    /[aeiou]re$/.test(base) && base.endsWith(`${piece}e`) ? known.align(`${piece}e`, sounds) : undefined;
  const last = whole?.parts.at(-1);
  if (!whole || !last || !/^[aeiou]+re$/.test(last.letters)) return known.align(piece, sounds);
  return { parts: [...whole.parts.slice(0, -1), { ...last, letters: last.letters.slice(0, -1) }] };
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

/** Two words whose sounds make up the whole. */
function compound(word: string, sounds: readonly Sound[], known: WordKnowledge): BuiltWord | undefined {
  const shortest = shortCompounds.has(word) ? 4 : 6;
  if (word.length < shortest || word.includes("'") || !known.sizes.has(word)) return undefined;
  for (let at = 2; at <= word.length - shortest / 2; at++) {
    const left = word.slice(0, at);
    const right = word.slice(at);
    const isShort = shortFirstHalves.has(left);
    if (notFirstHalves.has(left) || notSecondHalves.has(right)) continue;
    if ((at < 3 && !isShort) || (known.sizes.get(left) ?? 99) > 50 || (known.sizes.get(right) ?? 99) > 50)
      continue;
    for (const half of known.words.get(left) ?? []) {
      const count = soundsOf(half).length;
      const isHeard =
        sameSounds(soundsOf(half), sounds.slice(0, count)) &&
        (known.words.get(right) ?? []).some((other) => sameSounds(soundsOf(other), sounds.slice(count)));
      if (!isHeard || !(isShort || areFirm(left, right, sounds, count))) continue;
      // without is with and out; insect is no compound, though it divides so.
      const isCompound = !isShort || (known.sizes.get(right) ?? 99) <= 20;
      const border: Border = { letter: at, sound: count, kind: isCompound ? 'compound' : 'affix' };
      const built = joined(
        buildWord(left, sounds.slice(0, count), known),
        border,
        buildWord(right, sounds.slice(count), known),
      );
      if (built) return built;
    }
  }
  return undefined;
}

/** Both halves of a compound keep some stress, or are too long to meet by chance: *sunset*, *moreover*, not *button*. */
function areFirm(left: string, right: string, sounds: readonly Sound[], count: number): boolean {
  return (
    (isStressed(sounds.slice(0, count)) && isStressed(sounds.slice(count))) ||
    (left.length >= 4 && right.length >= 4)
  );
}

function isStressed(sounds: readonly Sound[]): boolean {
  return sounds.some(({ stress }) => (stress ?? 0) > 0);
}

function withSuffix(word: string, sounds: readonly Sound[], known: WordKnowledge): BuiltWord | undefined {
  for (const suffix of suffixes) {
    const at = word.length - suffix.letters.length;
    if (at < 3 || !word.endsWith(suffix.letters)) continue;
    const stem = word.slice(0, at);
    const rest = suffix.sounds.find((each) => endsSo(sounds, each));
    if (rest === undefined) continue;
    const count = sounds.length - soundsOf(rest).length;
    for (const base of basesOf(stem, suffix)) {
      if (!known.sizes.has(base) || !isOf(base, suffix, known)) continue;
      for (const reading of known.words.get(base) ?? []) {
        const said = soundsOf(reading);
        if (said.length !== count || !sameSounds(said, sounds.slice(0, count))) continue;
        const left = stemOf(stem, sounds.slice(0, count), base, said, known);
        const right = known.align(suffix.letters, sounds.slice(count));
        const border: Border = { letter: at, sound: count, kind: 'affix' };
        const built = joined(left, border, right && { parts: right.parts, borders: [] });
        // hid-den: a doubled letter is parted by the common rules.
        const isDoubled = base.length === stem.length - 1;
        if (built) return isDoubled ? { ...built, borders: left?.borders ?? [] } : built;
      }
    }
  }
  return undefined;
}

function basesOf(stem: string, { changes }: Affix): readonly string[] {
  const bases = [stem];
  if (stem.endsWith('i')) bases.push(`${stem.slice(0, -1)}y`);
  if (changes && /([bdfgklmnprst])\1$/.test(stem)) bases.push(stem.slice(0, -1));
  if (changes) bases.push(`${stem}e`);
  return bases;
}

function isOf(base: string, { of: bits, shortest }: Affix, known: WordKnowledge): boolean {
  return base.length >= shortest && ((known.partsOfSpeech.get(base) ?? 0) & bits) !== 0;
}

function withPrefix(word: string, sounds: readonly Sound[], known: WordKnowledge): BuiltWord | undefined {
  for (const prefix of prefixes) {
    const at = prefix.letters.length;
    const rest = word.slice(at);
    if (!word.startsWith(prefix.letters) || rest.length < prefix.shortest || !known.sizes.has(rest)) continue;
    const said = prefix.sounds.find((each) => startsSo(sounds, each));
    if (said === undefined) continue;
    const count = soundsOf(said).length;
    const after = sounds.slice(count);
    if (!isStressed(after)) continue;
    if (!(known.words.get(rest) ?? []).some((reading) => sameSounds(soundsOf(reading), after))) continue;
    const left = known.align(prefix.letters, sounds.slice(0, count));
    const right = buildWord(rest, after, known);
    const border: Border = { letter: at, sound: count, kind: 'affix' };
    const built = joined(left && { parts: left.parts, borders: [] }, border, right);
    if (built) return built;
  }
  return undefined;
}

function joined(
  left: BuiltWord | undefined,
  border: Border,
  right: BuiltWord | undefined,
): BuiltWord | undefined {
  if (!left || !right) return undefined;
  // The ending of a left half or of a right one (*unwanted*) is none of the whole.
  return {
    parts: [...left.parts, ...right.parts],
    borders: [
      ...left.borders,
      border,
      ...[...right.borders, ...endingBorder(right)].map((each) => ({
        ...each,
        letter: each.letter + border.letter,
        sound: each.sound + border.sound,
      })),
    ],
  };
}

/** Where a piece divides before an ending of its own that is a syllable: *un-want-ed*, *lis-ten-ers*. */
function endingBorder({ parts, inflection }: BuiltWord): readonly Border[] {
  if (!inflection) return [];
  const own = parts.slice(parts.length - inflection.endingParts);
  const stem = parts.slice(0, parts.length - inflection.endingParts);
  if (!(own[0]?.sounds.some(isVowel) || inflection.ending === 'ly') || inflection.change === 'doubled')
    return [];
  const letters = stem.reduce((sum, part) => sum + part.letters.replace('_e', '').length, 0);
  const said = stem.reduce((sum, part) => sum + part.sounds.length, 0);
  return [{ letter: letters, sound: said, kind: 'affix' }];
}

function startsSo(sounds: readonly Sound[], wanted: string): boolean {
  const codes = wanted.split(' ');
  return codes.every((code, index) => sounds[index]?.phoneme === code);
}

function endsSo(sounds: readonly Sound[], wanted: string): boolean {
  const codes = wanted.split(' ') as Phoneme[];
  return codes.every((code, index) => sounds[sounds.length - codes.length + index]?.phoneme === code);
}
