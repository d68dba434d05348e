import type { Phoneme } from '../phonics/phoneme.ts';
import type { Phonics } from '../phonics/phonics.ts';
import type { Ending, Part, Reading } from '../phonics/reading.ts';
import { type ConsonantRun, consonantRuns, endsSyllable } from '../phonics/structure.ts';
import type { TaughtSpelling } from './taught.ts';
import { correspondenceOf, type TaughtIndex } from './taught-index.ts';

/** Graphemes in a row, matched against all that the sequence ever teaches. */
export interface GraphemeRow {
  readonly graphemes: readonly GraphemeDemand[];
  /** The chunks of the sequence that fit into the row. */
  readonly chunks: readonly {
    readonly spelling: TaughtSpelling;
    readonly from: number;
    readonly to: number;
  }[];
}

/** What a reading asks of a child: the graphemes of its base word, and the rest. The same for every lesson. */
export interface WordDemands extends GraphemeRow {
  /** The endings that have to be opened, from the outside in. */
  readonly endings: readonly Ending[];
  /** The graphemes of the endings. They come with the ending and need not be taught, but practise what is. */
  readonly endingRow: GraphemeRow;
  readonly blends: readonly ConsonantRun[];
  /** Syllables of the base word. */
  readonly syllables: number;
}

/** One grapheme of the base word. */
export interface GraphemeDemand {
  /** The part of the whole word's reading that stands for it. */
  readonly part: Part;
  readonly letters: string;
  /** What the child has to know: for a reduced vowel the letter's plain sound. */
  readonly sounds: readonly Phoneme[];
  /** Name to tell it from others. */
  readonly correspondence: string;
  /** The spelling it is read by when that is taught, if the sequence has one. */
  readonly preferred?: TaughtSpelling;
  /** Another it may be read by as well. */
  readonly other?: TaughtSpelling;
}

/**
 * Takes a reading apart. An inflected word is its base word plus endings; the base is what the spellings, blends and
 * syllables are asked of, so *baking* asks for the a_e of *bake*, and the doubled p of *hopped* for nothing.
 */
export function demandsOf(reading: Reading, index: TaughtIndex, phonics: Phonics): WordDemands {
  const { base, endings, parts } = baseOf(reading);
  const graphemes = base.parts.map((part, at) =>
    graphemeDemand(base, part, parts[at] ?? part, index, phonics),
  );
  const endingParts = endings.length === 0 ? [] : reading.parts.filter((part) => !parts.includes(part));
  const endingGraphemes = endingParts.map((part) => graphemeDemand(reading, part, part, index, phonics));
  return {
    endings,
    graphemes,
    chunks: chunksIn(graphemes, index),
    endingRow: { graphemes: endingGraphemes, chunks: chunksIn(endingGraphemes, index) },
    blends: consonantRuns(base),
    syllables: base.syllables.length,
  };
}

function chunksIn(graphemes: readonly GraphemeDemand[], index: TaughtIndex): GraphemeRow['chunks'] {
  return graphemes.flatMap(({ correspondence }, from) =>
    (index.chunks.get(correspondence) ?? [])
      .filter(({ keys }) => keys.every((key, offset) => graphemes[from + offset]?.correspondence === key))
      .map(({ spelling, keys }) => ({ spelling, from, to: from + keys.length })),
  );
}

/** The innermost base word, the endings around it, and for each of its parts the one of the whole word in its place. */
function baseOf(reading: Reading): { base: Reading; endings: Ending[]; parts: readonly Part[] } {
  const endings: Ending[] = [];
  let base = reading;
  let parts = reading.parts;
  while (base.inflection !== undefined) {
    const { ending, baseParts, reading: inner } = base.inflection;
    endings.push(ending);
    const start = isPrefix(ending) ? parts.length - baseParts : 0;
    parts = parts.slice(start, start + baseParts);
    base = inner;
  }
  return { base, endings, parts };
}

function isPrefix(ending: Ending): boolean {
  return ending === 'un' || ending === 're';
}

function graphemeDemand(
  base: Reading,
  part: Part,
  shown: Part,
  index: TaughtIndex,
  phonics: Phonics,
): GraphemeDemand {
  const correspondence = correspondenceOf(part.letters, part.sounds, phonics);
  const exact = index.graphemes.get(correspondence);
  const plainSounds = isReduced(part, base)
    ? plainSoundsOf(part.letters, endsSyllable(base, part))
    : isVelarN(part, base)
      ? [['N'] as const]
      : [];
  const plain = plainSounds
    .map((sounds) => index.graphemes.get(correspondenceOf(part.letters, sounds, phonics)))
    .filter((spelling) => spelling !== undefined)
    .sort((left, right) => left.lesson.index - right.lesson.index)[0];
  // The weak o of wagon sounds like that of month, but nobody would practise the one with the other.
  const isMerelyAlike = plain !== undefined && (exact?.pattern[0]?.stress ?? 0) > 0;
  const [preferred, other] = isMerelyAlike ? [plain, exact] : [exact, plain];
  return {
    part: shown,
    letters: part.letters,
    sounds: plainSounds[0] ?? part.sounds,
    correspondence,
    ...(preferred === undefined ? {} : { preferred }),
    ...(other === undefined ? {} : { other }),
  };
}

/**
 * A reduced vowel is not an untaught one: a child who knows short i reads *rabbit*. It is a single vowel letter without
 * stress, in a word of two or more syllables, that says the neutral vowel or short i. Common practice of early-reading
 * teaching, no published source. That syllables must be open for it is asked of the word as a whole.
 */
function isReduced(part: Part, reading: Reading): boolean {
  return (
    reading.syllables.length > 1 &&
    (part.stress ?? 0) === 0 &&
    part.sounds.length === 1 &&
    (reducedSounds.has(part.sounds[0]) || isWeakE(part, reading)) &&
    shortSounds.has(part.letters)
  );
}

/** The e of *be-gin* and *pre-tend*: the dictionary writes IH in the one and IY in the other. */
function isWeakE(part: Part, reading: Reading): boolean {
  return part.letters === 'e' && part.sounds[0] === 'IY' && part !== reading.parts.at(-1);
}

/**
 * The n that ends a syllable before another that begins with K or G (*un-cle*, *jun-gle*, *mon-key*) turns to NG by
 * itself when n is said: plain n will do. In one syllable (*bank*, *pink*) nk is a spelling of its own.
 */
function isVelarN(part: Part, reading: Reading): boolean {
  const next = reading.parts[reading.parts.indexOf(part) + 1];
  const isVelar = next?.sounds[0] === 'K' || next?.sounds[0] === 'G';
  return part.letters === 'n' && part.sounds[0] === 'NG' && isVelar && endsSyllable(reading, part);
}

/** The sounds a vowel letter may say for its short one, its short sound first; at the end of a syllable also the long. */
function plainSoundsOf(letter: string, open: boolean): readonly (readonly Phoneme[])[] {
  const short = shortSounds.get(letter);
  return [...(short === undefined ? [] : [[short]]), ...(open ? (longSounds.get(letter) ?? []) : [])];
}

const reducedSounds: ReadonlySet<Phoneme | undefined> = new Set(['AH', 'IH', 'UH']);

const shortSounds: ReadonlyMap<string, Phoneme> = new Map([
  ['a', 'AE'],
  ['e', 'EH'],
  ['i', 'IH'],
  ['o', 'AA'],
  ['u', 'AH'],
  ['y', 'IH'],
]);

const longSounds: ReadonlyMap<string, readonly (readonly Phoneme[])[]> = new Map([
  ['a', [['EY']]],
  ['e', [['IY']]],
  ['i', [['AY']]],
  ['o', [['OW']]],
  ['u', [['UW'], ['Y', 'UW']]],
  ['y', [['AY'], ['IY']]],
]);
