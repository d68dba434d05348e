import { changesBetween, nearestName } from '../text/nearest-name.ts';

/**
 * The lesson that someone surely means by a name that no lesson has: `5` by `Lesson 5` or `05`, `Autumn` by `autum`. Nothing
 * where that is a guess: of numbers the nearest in writing is seldom meant, not 1 by 13.
 */
export function lessonMeant(asked: string, names: readonly string[]): string | undefined {
  const wanted = bareName(asked);
  const same = names.find((name) => bareName(name) === wanted);
  if (same !== undefined) return same;
  const near = nearestName(asked, names);
  return near === undefined || (isNumber(wanted) && isNumber(bareName(near))) ? undefined : near;
}

/**
 * The lessons that a mistaken name may stand for, the nearest first, at most three. Two numbers are as far apart as their
 * difference; other names as the letters to change, add, drop or swap.
 */
export function nearestLessons(mistaken: string, names: readonly string[]): readonly string[] {
  const asked = bareName(mistaken);
  return names
    .map((name, index) => ({ name, index, distance: distanceBetween(asked, bareName(name)) }))
    .sort((one, other) => one.distance - other.distance || one.index - other.index)
    .slice(0, 3)
    .map(({ name }) => name);
}

/** Names are compared up to this length, in UTF-16 code units; the work grows with its square. */
const longestCompared = 100;

/** A name without capitals, without `lesson` before it and without zeros before a number. */
function bareName(name: string): string {
  const text = name
    .trim()
    .toLowerCase()
    .slice(0, longestCompared)
    .replace(/^lesson[\s:#.]+/, '');
  return isNumber(text) ? String(Number(text)) : text;
}

function isNumber(name: string): boolean {
  return /^\d+$/.test(name);
}

function distanceBetween(one: string, other: string): number {
  return isNumber(one) && isNumber(other)
    ? Math.abs(Number(one) - Number(other))
    : changesBetween(one, other);
}
