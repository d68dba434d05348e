/**
 * The names that a mistaken one most likely stands for, the nearest first, at most three. Two numbers are as far apart as
 * their difference; other names as the letters to change, add or drop.
 */
export function nearestNames(mistaken: string, names: readonly string[]): readonly string[] {
  const asked = mistaken.trim().toLowerCase().slice(0, longestCompared);
  return names
    .map((name, index) => ({ name, index, distance: distanceBetween(asked, name.trim().toLowerCase()) }))
    .sort((one, other) => one.distance - other.distance || one.index - other.index)
    .slice(0, 3)
    .map(({ name }) => name);
}

/** Names are compared up to this length, in UTF-16 code units; the work grows with its square. */
const longestCompared = 100;

function distanceBetween(one: string, other: string): number {
  const numbers = [Number(one), Number(other)] as const;
  if (one !== '' && other !== '' && numbers.every(Number.isFinite)) return Math.abs(numbers[0] - numbers[1]);
  return edits(one, other.slice(0, longestCompared));
}

/** Levenshtein's distance, one row at a time. */
function edits(one: string, other: string): number {
  let above = Array.from({ length: other.length + 1 }, (_, column) => column);
  for (let row = 1; row <= one.length; row++) {
    const current = [row];
    for (let column = 1; column <= other.length; column++) {
      const same = one[row - 1] === other[column - 1] ? 0 : 1;
      current.push(
        Math.min((above[column] ?? 0) + 1, (current[column - 1] ?? 0) + 1, (above[column - 1] ?? 0) + same),
      );
    }
    above = current;
  }
  return above[other.length] ?? 0;
}
