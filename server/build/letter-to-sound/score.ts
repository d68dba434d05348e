import type { ListedWord } from './word-list.ts';

/** How well words were read. */
export interface Score {
  readonly words: number;
  /** Words none of whose listed readings was given. */
  readonly wrong: number;
  /** Phones of the listed readings compared with: for each word the nearest of its readings. */
  readonly phones: number;
  /** Phones to change, add or drop to reach that reading. */
  readonly phoneErrors: number;
  /** How many of the wrong words are right when IH and AH, and AO and AA, count as the same. */
  readonly wrongByReducedVowel: number;
}

/** Compares given readings with the listed ones; any listed reading is right. */
export function scoreReadings(words: readonly ListedWord[], given: readonly (readonly string[])[]): Score {
  let [wrong, phones, phoneErrors, wrongByReducedVowel] = [0, 0, 0, 0];
  words.forEach(({ readings }, index) => {
    const said = given[index] ?? [];
    const distances = readings.map((reading) => distanceBetween(reading, said));
    const errors = Math.min(...distances);
    phones += readings[distances.indexOf(errors)]?.length ?? 0;
    phoneErrors += errors;
    if (errors === 0) return;
    wrong += 1;
    if (readings.some((reading) => merged(reading) === merged(said))) wrongByReducedVowel += 1;
  });
  return { words: words.length, wrong, phones, phoneErrors, wrongByReducedVowel };
}

/** The least number of phones to change, add or drop (Levenshtein). */
export function distanceBetween(left: readonly string[], right: readonly string[]): number {
  let row = Array.from({ length: right.length + 1 }, (_, index) => index);
  for (let at = 0; at < left.length; at++) {
    const next = [at + 1];
    for (let to = 0; to < right.length; to++) {
      const changed = (row[to] as number) + (left[at] === right[to] ? 0 : 1);
      next.push(Math.min(changed, (row[to + 1] as number) + 1, (next[to] as number) + 1));
    }
    row = next;
  }
  return row[right.length] as number;
}

function merged(phones: readonly string[]): string {
  return phones.join(' ').replaceAll('IH', 'AH').replaceAll('AO', 'AA');
}
