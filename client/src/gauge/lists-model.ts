import type { Gauge } from '../../../server/src/editor/protocol.ts';
import { counted, wholeNumber } from './figures.ts';
import type { Item, ItemState, ListModel } from './model.ts';

/** More rows than this are not drawn; the rest is counted in `more`. */
export const mostRows = 200;

const noDots = { filled: 0, empty: 0 };
/** A row of more dots than this says less than the figure beside it. */
const mostDots = 10;

/** The different words that are not taught, each with why. */
export function notTaughtModel(gauge: Gauge): ListModel {
  const items = gauge.notTaught.map(({ word, why, ranges }) => ({
    key: word,
    label: word,
    detail: why,
    figure: ranges.length > 1 ? `${wholeNumber(ranges.length)} times` : '',
    state: 'short' as const,
    dots: noDots,
    places: ranges,
  }));
  const summary =
    items.length === 0
      ? 'Every word is taught, a name or a story word.'
      : counted(items.length, 'different word');
  return list(summary, items.length === 0 ? 'met' : 'short', items);
}

/** The new spellings of the lesson with their uses. */
export function spellingsModel(gauge: Gauge): ListModel {
  const { newSpellings, practice } = gauge;
  const items = newSpellings.map(({ letters, keyWord, ranges }) => {
    const label = `${letters} as in ${keyWord}`;
    const figure = ranges.length === 0 ? 'not used yet' : counted(ranges.length, 'word');
    return {
      key: label,
      label,
      detail: '',
      figure,
      state: ranges.length === 0 ? ('short' as const) : ('met' as const),
      dots: { filled: Math.min(ranges.length, mostDots), empty: ranges.length === 0 ? 1 : 0 },
      places: ranges,
    };
  });
  if (items.length === 0) return list('This lesson teaches no new spelling.', 'none', items);
  const unused = items.filter(({ state }) => state === 'short').length;
  const met = practice.words >= practice.atLeast && unused === 0;
  const unusedText = unused === 0 ? '' : `; ${counted(unused, 'spelling')} not used yet`;
  const summary = `${counted(practice.words, 'word')} of practice, at least ${wholeNumber(practice.atLeast)} asked${unusedText}`;
  return list(summary, met ? 'met' : 'short', items);
}

/** The new high-frequency words of the lesson with their uses. */
export function highFrequencyModel(gauge: Gauge): ListModel {
  const items = gauge.newHighFrequencyWords.map(({ word, atLeast, ranges }) => {
    const wanting = Math.max(0, atLeast - ranges.length);
    const figure = `${wholeNumber(ranges.length)} of ${wholeNumber(atLeast)}`;
    return {
      key: word,
      label: word,
      detail: '',
      figure,
      state: wanting === 0 ? ('met' as const) : ('short' as const),
      dots: {
        filled: Math.min(ranges.length, mostDots),
        empty: Math.min(wanting, Math.max(0, mostDots - ranges.length)),
      },
      places: ranges,
    };
  });
  if (items.length === 0) return list('This lesson teaches no new high-frequency word.', 'none', items);
  const short = items.filter(({ state }) => state === 'short').length;
  const summary =
    short === 0
      ? 'Each is used as often as asked.'
      : `${wholeNumber(short)} of ${counted(items.length, 'word')} used less often than asked`;
  return list(summary, short === 0 ? 'met' : 'short', items);
}

function list(summary: string, state: ItemState, items: readonly Item[]): ListModel {
  return { summary, state, items: items.slice(0, mostRows), more: leftOut(items.length, 'more') };
}

/** How many of a number of rows are left out; empty when none is. */
export function leftOut(count: number, what: string): string {
  return count > mostRows ? `and ${wholeNumber(count - mostRows)} ${what}` : '';
}
