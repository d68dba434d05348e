import { rowsOf } from './table.ts';

/** The words that are never offered, each with its reason. Forms are for the caller, who knows what a word is a form of. */
export interface UnfitWords {
  /** The reason for a word, in lower case, that the table has or has the beginning of. */
  reasonFor(word: string): string | undefined;
  /** The reason that half a compound gives for the whole. */
  reasonForHalf(half: string): string | undefined;
}

/** Reads the table of unfit words. */
export function readUnfitWords(table: string): UnfitWords {
  const exact = new Map<string, string>();
  const stems = new Map<string, (readonly [stem: string, reason: string])[]>();
  for (const { word, reason } of rowsOf(table, ['word', 'reason'])) {
    if (!word.endsWith('*')) {
      exact.set(word, reason);
      continue;
    }
    const head = word.slice(0, stemHead);
    stems.set(head, [...(stems.get(head) ?? []), [word.slice(0, -1), reason]]);
  }
  const reasonFor = (word: string): string | undefined =>
    exact.get(word) ?? stems.get(word.slice(0, stemHead))?.find(([stem]) => word.startsWith(stem))?.[1];
  return {
    reasonFor,
    reasonForHalf: (half) => {
      const reason = reasonFor(half);
      return reason !== undefined && ofWholeWordsOnly.has(reason) ? undefined : reason;
    },
  };
}

/** Beginnings are looked up by their first letters; none is shorter. */
const stemHead = 3;

/** Reasons that say nothing of a compound with the word: *con* is a fragment, *concourse* none. */
const ofWholeWordsOnly: ReadonlySet<string> = new Set(['a name', 'not a word by itself']);
