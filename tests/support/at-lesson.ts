import { expect } from 'vitest';
import type { Phonics } from '../../server/src/phonics/phonics.ts';
import type { Reading } from '../../server/src/phonics/reading.ts';
import { readSequence } from '../../server/src/sequence/read-sequence.ts';
import type { Missing, Taught, TaughtSpelling } from '../../server/src/sequence/taught.ts';
import { type Teaching, teachingOf } from '../../server/src/sequence/teaching.ts';

/** What a test may say of one word at one lesson. */
export interface WordAtLesson {
  /** The word can be sounded out. */
  isDecodable(): void;
  /**
   * It lacks exactly these things, in this order, each as `spelling igh as in light (5)`, `ending s (2)`, `blend start st`,
   * `syllables 2 (7)`; the lesson that will teach it in brackets, none where no lesson does.
   */
  lacks(...missing: string[]): void;
  /** It is read by exactly these spellings, each as `a as in map`. */
  uses(...spellings: string[]): void;
}

/** Writes tests of a sequence in the words of the trade: `classroom(yaml, phonics).atLesson('2').word('jumps').lacks('ending s')`. */
export function classroom(yaml: string, phonics: Phonics) {
  const teaching: Teaching = teachingOf(readSequence(yaml), phonics);
  const taughtAt = (lesson: string): Taught => {
    const taught = teaching.taughtAt(lesson);
    if (taught === undefined) {
      throw new Error(`There is no lesson ${lesson}.`);
    }
    return taught;
  };
  return {
    teaching,
    atLesson: (lesson: string) => ({
      taught: taughtAt(lesson),
      word: (word: string) => wordAtLesson(firstReading(word, phonics), taughtAt(lesson)),
    }),
  };
}

function wordAtLesson(reading: Reading, taught: Taught): WordAtLesson {
  const verdict = taught.judge(reading);
  return {
    isDecodable: () => expect(verdict.missing.map(shown)).toEqual([]),
    lacks: (...missing) => expect(verdict.missing.map(shown)).toEqual(missing),
    uses: (...spellings) => expect(verdict.uses.map(shownSpelling)).toEqual(spellings),
  };
}

function firstReading(word: string, phonics: Phonics): Reading {
  const reading = phonics.readingsOf(word)[0];
  if (reading === undefined) {
    throw new Error(`The table has no "${word}".`);
  }
  return reading;
}

function shown(missing: Missing): string {
  const lesson = missing.lesson === undefined ? '' : ` (${missing.lesson.name})`;
  switch (missing.kind) {
    case 'spelling':
      return `spelling ${missing.letters}${missing.keyWord === undefined ? '' : ` as in ${missing.keyWord}`}${lesson}`;
    case 'ending':
      return `ending ${missing.ending}${lesson}`;
    case 'blend':
      return `blend ${missing.blend} ${missing.letters}${lesson}`;
    case 'syllables':
      return `syllables ${missing.syllables}${lesson}`;
  }
}

function shownSpelling({ line }: TaughtSpelling): string {
  return `${line.letters} as in ${line.keyWord}`;
}
