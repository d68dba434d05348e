import { type Counts, type ReviewedWord, wordKinds } from './review.ts';

/** Counts running words by kind. */
export function countsOf(words: readonly ReviewedWord[]): Counts {
  const counts = emptyCounts();
  for (const { kind } of words) counts[kind]++;
  return { ...counts, words: words.length };
}

/** Adds up the counts of several pages. */
export function summedCounts(all: readonly Counts[]): Counts {
  const sum = emptyCounts();
  for (const counts of all) {
    sum.words += counts.words;
    for (const kind of wordKinds) sum[kind] += counts[kind];
  }
  return sum;
}

/**
 * The readable share, (decodable + high-frequency) / running words, from 0 to 1: the lesson-to-text match of the reading
 * research. Names and story words are in the denominator only. 1 when there are no words.
 */
export function readableShare(counts: Counts): number {
  return shareOf(readableWords(counts), counts.words);
}

/** Running words a child can read: decodable and high-frequency. */
export function readableWords(counts: Counts): number {
  return counts.decodable + counts['high-frequency'];
}

/** The decodable share, decodable / running words, from 0 to 1; 1 when there are no words. */
export function decodableShare(counts: Counts): number {
  return shareOf(counts.decodable, counts.words);
}

/** True when the readable share is at least `percent`, compared without rounding. */
export function reachesReadable(counts: Counts, percent: number): boolean {
  return readableWords(counts) * 100 >= percent * counts.words;
}

/** How many words short of the target a text of this length is; 0 when it reaches it. */
export function wordsShort(counts: Counts, percent: number): number {
  return Math.max(0, Math.ceil((percent * counts.words) / 100 - 1e-9) - readableWords(counts));
}

/**
 * A share as percent for people: one decimal, rounded down, so that a text shows 95.0 only when it reaches it
 * (`0.9499` gives `94.9`).
 */
export function shownPercent(share: number): string {
  // A share of whole words that is not itself a tenth of a percent lies further from one than this below 10^8 words.
  return (Math.floor(share * 1000 + 1e-9) / 10).toFixed(1);
}

/** A share of the running words for people, cut as `shownPercent` does: `93.7 %`; a dash for a text of no words. */
export function shownShare(share: number, words = 1): string {
  return words === 0 ? '–' : `${shownPercent(share)} %`;
}

function shareOf(part: number, whole: number): number {
  return whole === 0 ? 1 : part / whole;
}

function emptyCounts(): Record<keyof Counts, number> {
  return { words: 0, decodable: 0, 'high-frequency': 0, name: 0, 'story-word': 0, 'not-taught': 0 };
}
