import type { Lesson, Sequence } from '../sequence/sequence.ts';
import { textHash } from '../text/text-hash.ts';

/**
 * A key for each lesson of a sequence, equal for two lessons exactly when children have been taught the same by the end of
 * both (but for one chance in 2^53): then every story stands the same at both. What later lessons teach does not count,
 * except that a sequence that mentions a dimension anywhere checks it everywhere.
 */
export function lessonKeys(sequence: Sequence): ReadonlyMap<Lesson, string> {
  const { accent, mentions, pronunciations, targets } = sequence;
  let key = textHash(
    JSON.stringify([
      accent,
      [...mentions].sort(),
      pronunciations.map(({ word, graphemes }) => [word.value, graphemes.value]),
      targets,
    ]),
  );
  const keys = new Map<Lesson, string>();
  for (const lesson of sequence.lessons) {
    key = textHash(`${key} ${taughtIn(lesson)}`);
    keys.set(lesson, key);
  }
  return keys;
}

/** All that a lesson teaches and asks, without its places in the file. */
function taughtIn(lesson: Lesson): string {
  return JSON.stringify([
    lesson.spellings.map(({ value }) => [value.letters, value.keyWord]),
    lesson.highFrequencyWords.map(({ value }) => value),
    lesson.endings.map(({ value }) => value),
    lesson.blends.map(({ value }) => value),
    lesson.syllables?.value ?? null,
    lesson.punctuation.map(({ value }) => value),
    lesson.targets,
  ]);
}
