import type { AlignedPart } from '../phonics/align.ts';
import { baseOf } from '../phonics/inflected-reading.ts';
import type { Phonics } from '../phonics/phonics.ts';
import { type Ending, endings } from '../phonics/reading.ts';
import type { ListedWord } from '../phonics/word-list.ts';
import { mayCover } from '../sequence/may-cover.ts';
import type { Taught } from '../sequence/taught.ts';
import type { Teaching } from '../sequence/teaching.ts';
import { foldedWord } from '../text/folded-word.ts';
import { letterBits } from './letter-bits.ts';

/**
 * A quick look at words that rules out most of those that cannot be read at a lesson, so that few have to be judged. It
 * lets through too much and never too little.
 */
export interface LessonSieve {
  /** The words that the sequence itself says something of by this lesson: high-frequency words and pronunciations. */
  readonly given: ReadonlySet<string>;
  /** Bits of the letters that taught spellings supply. */
  readonly letters: number;
  /**
   * Whether one of a word's readings may be readable; a form is read as its base is.
   *
   * @param isBaseRead says it of what the reading at a place is a form of: true for a base that the list does not have.
   */
  someReading(readings: ListedWord['readings'], isBaseRead: (at: number) => boolean): boolean;
  /** Whether a word may be readable. */
  mayBeRead(listed: ListedWord): boolean;
}

/** Makes the sieve of a lesson. `phonics` is the one that `teaching` was made with. */
export function createLessonSieve(teaching: Teaching, taught: Taught, phonics: Phonics): LessonSieve {
  const { lesson, sequence } = taught;
  const given = wordsGiven(taught);
  const open: ReadonlySet<Ending> = new Set(
    sequence.mentions.has('endings')
      ? sequence.lessons.slice(0, lesson.index + 1).flatMap((each) => each.endings.map(({ value }) => value))
      : endings,
  );
  const spellings = teaching.spellings.filter((spelling) => spelling.lesson.index <= lesson.index);
  const mayHold = remembered(mayCover(spellings, phonics));

  const someReading: LessonSieve['someReading'] = (readings, isBaseRead) =>
    readings.some(({ parts, inflection }, at) =>
      inflection === undefined ? parts.every(mayHold) : open.has(inflection.ending) && isBaseRead(at),
    );
  const mayBeRead = ({ word, compound, readings }: ListedWord): boolean =>
    given.has(word) ||
    // A compound with a word in it that is taught as a whole is not read by its letters alone: *something*.
    compound?.some((half) => given.has(half)) === true ||
    someReading(readings, (at) => {
      const base = baseAt(word, readings[at]);
      return base === undefined || mayBeRead(base);
    });
  const baseAt = (
    word: string,
    reading: ListedWord['readings'][number] | undefined,
  ): ListedWord | undefined =>
    reading?.inflection && phonics.words.find(baseOf(word, reading.parts, reading.inflection));

  return {
    given,
    letters: letterBits(spellings.flatMap(({ pattern }) => pattern.map(({ letters }) => letters)).join('')),
    someReading,
    mayBeRead,
  };
}

function wordsGiven({ sequence, lesson }: Taught): ReadonlySet<string> {
  const taught = sequence.lessons.slice(0, lesson.index + 1).flatMap((each) => each.highFrequencyWords);
  const pronounced = sequence.pronunciations.map(({ word }) => word);
  return new Set([...taught, ...pronounced].map(({ value }) => foldedWord(value)));
}

/** The lexicon has one object for each part there is, so the answer for each is kept. */
function remembered(test: (part: AlignedPart) => boolean): (part: AlignedPart) => boolean {
  const known = new Map<AlignedPart, boolean>();
  return (part) => {
    let answer = known.get(part);
    if (answer === undefined) {
      answer = test(part);
      known.set(part, answer);
    }
    return answer;
  };
}
