import type { Phonics } from '../phonics/phonics.ts';
import { type CoverUnit, coverOf } from './cover.ts';
import type { Lesson } from './sequence.ts';
import type { Missing, TaughtSpelling, Verdict } from './taught.ts';
import type { TaughtIndex } from './taught-index.ts';
import type { WordDemands } from './word-demands.ts';

/**
 * How a word stands at a lesson. Missing things come in the order spellings (as in the word, each once), endings,
 * blends, syllables; `lesson` is always a later one.
 */
export function judged(demands: WordDemands, now: Lesson, index: TaughtIndex, phonics: Phonics): Verdict {
  const cover = coverOf(demands, now.index);
  const uses: TaughtSpelling[] = [];
  const missing: Missing[] = [];
  const named = new Set<TaughtSpelling | string>();
  for (const unit of cover) {
    const grapheme = demands.graphemes[unit.from];
    if (unit.spelling !== undefined && unit.spelling.lesson.index <= now.index) {
      uses.push(unit.spelling);
    } else if (grapheme !== undefined && !named.has(unit.spelling ?? grapheme.correspondence)) {
      named.add(unit.spelling ?? grapheme.correspondence);
      missing.push(missingSpelling(unit, grapheme, demands.syllables, phonics));
    }
  }
  for (const { spelling } of coverOf(demands.endingRow, now.index)) {
    if (spelling !== undefined && spelling.lesson.index <= now.index) {
      uses.push(spelling);
    }
  }
  missing.push(...missingForms(demands, now, index));
  return missing.length === 0 ? { missing: nothing, uses } : { missing, uses };
}

const nothing: readonly Missing[] = [];

function missingSpelling(
  unit: CoverUnit,
  grapheme: WordDemands['graphemes'][number],
  syllables: number,
  phonics: Phonics,
): Missing {
  const { part, letters, sounds } = grapheme;
  if (unit.spelling !== undefined) {
    const { line, lesson, pattern } = unit.spelling;
    const taughtSounds = pattern.flatMap((step) => step.sounds);
    return {
      kind: 'spelling',
      letters: line.letters,
      sounds: taughtSounds,
      keyWord: line.keyWord,
      lesson,
      part,
    };
  }
  // The weak vowel of a short word (the, a) has no key word: kitten's is a syllable's.
  const isWeak = syllables === 1 && part.stress === 0 && letters.length === 1;
  if (isWeak) return { kind: 'spelling', letters, sounds, isWeak, part };
  const keyWord = phonics.keyWordFor(letters, sounds, part.stress);
  return { kind: 'spelling', letters, sounds, ...(keyWord === undefined ? {} : { keyWord }), part };
}

function missingForms(demands: WordDemands, now: Lesson, index: TaughtIndex): Missing[] {
  const { mentions } = index.sequence;
  const missing: Missing[] = [];
  const isOpen = (lesson: Lesson | undefined): boolean => lesson !== undefined && lesson.index <= now.index;
  const later = (lesson: Lesson | undefined): { lesson?: Lesson } => (lesson === undefined ? {} : { lesson });
  if (mentions.has('endings')) {
    for (const ending of new Set(demands.endings)) {
      const lesson = index.endings.get(ending);
      if (!isOpen(lesson)) {
        missing.push({ kind: 'ending', ending, ...later(lesson) });
      }
    }
  }
  if (mentions.has('blends')) {
    const closed = new Set<string>();
    for (const { place, letters, from, to } of demands.blends) {
      // A chunk taught as a whole is read as a whole: its consonants need no blending.
      const chunks = demands.chunks.filter((chunk) => chunk.from <= from && chunk.to >= to);
      const lesson = earliest([index.blends.get(place), ...chunks.map(({ spelling }) => spelling.lesson)]);
      if (!isOpen(lesson) && !closed.has(`${place} ${letters}`)) {
        closed.add(`${place} ${letters}`);
        missing.push({ kind: 'blend', blend: place, letters, ...later(lesson) });
      }
    }
  }
  if (mentions.has('syllables')) {
    const step = index.syllables.find(({ count }) => count >= demands.syllables);
    if (demands.syllables > 1 && !isOpen(step?.lesson)) {
      missing.push({ kind: 'syllables', syllables: demands.syllables, ...later(step?.lesson) });
    }
  }
  return missing;
}

function earliest(lessons: readonly (Lesson | undefined)[]): Lesson | undefined {
  let first: Lesson | undefined;
  for (const lesson of lessons) {
    if (lesson !== undefined && (first === undefined || lesson.index < first.index)) {
      first = lesson;
    }
  }
  return first;
}
