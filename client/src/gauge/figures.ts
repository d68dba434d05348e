import { shownShare } from '../../../server/src/review/figures.ts';

/** How the gauge writes its numbers: the status bar, its tooltip and the view all use these. */

/** A share as percent with one decimal, rounded down: `96.0 %`; a dash when there is nothing to divide. */
export function percentOf(part: number, whole: number): string {
  return shownShare(part / whole, whole);
}

/** A target from 0 to 1 as percent, as short as it was written: `95 %`, `92.5 %`. */
export function targetPercent(target: number): string {
  return `${Math.round(target * 10000) / 100} %`;
}

/** A number with its noun: `1 word`, `2 words`, `20,000 words`. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${wholeNumber(count)} ${count === 1 ? one : many}`;
}

/** A whole number with commas between the thousands. */
export function wholeNumber(count: number): string {
  return String(count).replace(/\B(?=(\d{3})+$)/g, ',');
}
