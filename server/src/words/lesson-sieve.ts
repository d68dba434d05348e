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
  /** Whether the lessons so far open an ending. */
  isOpen(ending: Ending): boolean;
  /** Whether a taught spelling may cover a part of a word that has no ending. */
  mayHold(part: AlignedPart): boolean;
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

  /** A form is read as its base is; what the list does not have may be readable. */
  const mayBeRead = ({ word, compound, readings }: ListedWord): boolean =>
    given.has(word) ||
    // A compound with a word in it that is taught as a whole is not read by its letters alone: *something*.
    compound?.some((half) => given.has(half)) === true ||
    readings.some(({ parts, inflection }) => {
      if (inflection === undefined) return parts.every(mayHold);
      if (!open.has(inflection.ending)) return false;
      const base = phonics.words.find(baseOf(word, parts, inflection));
      return base === undefined || mayBeRead(base);
    });

  return {
    given,
    letters: letterBits(spellings.flatMap(({ pattern }) => pattern.map(({ letters }) => letters)).join('')),
    isOpen: (ending) => open.has(ending),
    mayHold,
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
