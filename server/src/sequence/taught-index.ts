import type { Phonics } from '../phonics/phonics.ts';
import type { Ending, Part } from '../phonics/reading.ts';
import { foldedWord } from '../text/folded-word.ts';
import { plainMark } from './punctuation-mark.ts';
import type { Blend, Lesson, Sequence } from './sequence.ts';
import type { TaughtSpelling } from './taught.ts';

/** Everything a whole sequence teaches, looked up by what it is; each entry holds the earliest lesson. */
export interface TaughtIndex {
  readonly sequence: Sequence;
  /** Spellings of one grapheme, by `correspondenceOf`. */
  readonly graphemes: ReadonlyMap<string, TaughtSpelling>;
  /** Spellings over several graphemes, by the correspondence of their first. */
  readonly chunks: ReadonlyMap<string, readonly Chunk[]>;
  readonly endings: ReadonlyMap<Ending, Lesson>;
  readonly blends: ReadonlyMap<Blend, Lesson>;
  /** The lessons that raise the number of syllables, in order, each with the number it opens. */
  readonly syllables: readonly { readonly count: number; readonly lesson: Lesson }[];
  /** By `plainMark`. */
  readonly punctuation: ReadonlyMap<string, Lesson>;
  /** By `foldedWord`. */
  readonly highFrequencyWords: ReadonlyMap<string, Lesson>;
}

/** A spelling over several graphemes with the correspondence of each. */
export interface Chunk {
  readonly spelling: TaughtSpelling;
  readonly keys: readonly string[];
}

/** The name under which a grapheme with its sounds is looked up. */
export function correspondenceOf(letters: string, sounds: Part['sounds'], phonics: Phonics): string {
  return `${letters} ${phonics.soundClass(letters, sounds)}`;
}

/** Sets up the look-up tables of a sequence; `spellings` are those that teach something new, in the order of the file. */
export function indexOf(sequence: Sequence, spellings: readonly TaughtSpelling[]): TaughtIndex {
  const graphemes = new Map<string, TaughtSpelling>();
  const chunks = new Map<string, Chunk[]>();
  for (const spelling of spellings) {
    const keys = patternKeys(spelling);
    const first = keys[0];
    if (first === undefined) {
      continue;
    }
    if (keys.length > 1) {
      chunks.set(first, [...(chunks.get(first) ?? []), { spelling, keys }]);
    } else {
      graphemes.set(first, spelling);
    }
  }
  const { lessons } = sequence;
  const syllables: { count: number; lesson: Lesson }[] = [];
  for (const lesson of lessons) {
    if (lesson.syllables !== undefined && lesson.syllables.value > (syllables.at(-1)?.count ?? 1)) {
      syllables.push({ count: lesson.syllables.value, lesson });
    }
  }
  return {
    sequence,
    graphemes,
    chunks,
    endings: firstLessons(lessons, (lesson) => lesson.endings.map(({ value }) => value)),
    blends: firstLessons(lessons, (lesson) => lesson.blends.map(({ value }) => value)),
    syllables,
    punctuation: firstLessons(lessons, (lesson) => lesson.punctuation.map(({ value }) => plainMark(value))),
    highFrequencyWords: firstLessons(lessons, (lesson) =>
      lesson.highFrequencyWords.map(({ value }) => foldedWord(value)),
    ),
  };
}

/** The correspondences of a spelling's graphemes, as `correspondenceOf` names them. */
export function patternKeys(spelling: TaughtSpelling): readonly string[] {
  return spelling.pattern.map(({ letters, soundClass }) => `${letters} ${soundClass}`);
}

function firstLessons<Item>(
  lessons: readonly Lesson[],
  itemsOf: (lesson: Lesson) => readonly Item[],
): Map<Item, Lesson> {
  const first = new Map<Item, Lesson>();
  for (const lesson of lessons) {
    for (const item of itemsOf(lesson)) {
      if (!first.has(item)) {
        first.set(item, lesson);
      }
    }
  }
  return first;
}
