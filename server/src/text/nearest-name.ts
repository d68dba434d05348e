/**
 * The known name a writer most likely meant by `given`, or none when nothing is near: at most a third of the letters
 * (and at most three) may be changed, left out, added or swapped with their neighbour, but not all of them; capitals are
 * not counted.
 */
export function nearestName(given: string, known: readonly string[]): string | undefined {
  if (given.length > 40) return undefined;
  let nearest: string | undefined;
  let fewest = Math.min(3, Math.ceil(given.length / 3), given.length - 1) + 1;
  for (const name of known) {
    const changes = changesBetween(given.toLowerCase(), name.toLowerCase());
    if (changes < fewest) {
      fewest = changes;
      nearest = name;
    }
  }
  return nearest;
}

/** Optimal string alignment distance: single letters changed, left out, added, or two neighbours swapped. */
export function changesBetween(left: string, right: string): number {
  let twoBack: number[] = [];
  let oneBack = Array.from({ length: right.length + 1 }, (_, index) => index);
  for (let row = 1; row <= left.length; row++) {
    const current = [row];
    for (let column = 1; column <= right.length; column++) {
      const same = left[row - 1] === right[column - 1];
      let fewest = Math.min(
        (oneBack[column] ?? 0) + 1,
        (current[column - 1] ?? 0) + 1,
        (oneBack[column - 1] ?? 0) + (same ? 0 : 1),
      );
      if (
        row > 1 &&
        column > 1 &&
        left[row - 1] === right[column - 2] &&
        left[row - 2] === right[column - 1]
      ) {
        fewest = Math.min(fewest, (twoBack[column - 2] ?? 0) + 1);
      }
      current.push(fewest);
    }
    twoBack = oneBack;
    oneBack = current;
  }
  return oneBack[right.length] ?? 0;
}
