import type { Gauge } from '../../../server/src/editor/protocol.ts';
import { readableWords } from '../../../server/src/review/figures.ts';
import { counted, percentOf, wholeNumber } from './figures.ts';
import { kindTexts } from './kinds.ts';
import { leftOut, mostRows } from './lists-model.ts';
import type { ColumnsModel, PagesModel, Segment } from './model.ts';

/** The sentences by length, with the limit. */
export function sentencesModel(gauge: Gauge): ColumnsModel {
  const { atMost, each } = gauge.sentences;
  const longest = each.reduce((most, { words }) => Math.max(most, words), 0);
  const over = each.filter(({ words }) => words > atMost).length;
  const scale = Math.max(longest, atMost, 1);
  const columns = each.map(({ words, range }, index) => ({
    key: String(index),
    words,
    height: words / scale,
    over: words > atMost,
    place: range,
    description: `Sentence ${wholeNumber(index + 1)}, ${counted(words, 'word')}${overText(words, atMost)}`,
  }));
  return {
    summary: overSummary(counted(each.length, 'sentence'), `longest ${counted(longest, 'word')}`, over),
    state: each.length === 0 ? 'none' : over === 0 ? 'met' : 'short',
    limit: atMost / scale,
    limitText: `limit ${counted(atMost, 'word')}`,
    columns: longestFirst(columns),
    more:
      each.length > mostRows
        ? `the ${wholeNumber(mostRows)} longest of ${wholeNumber(each.length)} are drawn`
        : '',
  };
}

/** The longest ones, in the order of the text. */
function longestFirst<T extends { readonly words: number; readonly key: string }>(
  columns: readonly T[],
): readonly T[] {
  if (columns.length <= mostRows) return columns;
  const kept = new Set([...columns].sort((a, b) => b.words - a.words).slice(0, mostRows));
  return columns.filter((column) => kept.has(column));
}

function overText(words: number, atMost: number): string {
  return words > atMost ? `, ${wholeNumber(words - atMost)} over the limit` : '';
}

function overSummary(count: string, longest: string, over: number): string {
  return `${count}, ${longest}${over === 0 ? '' : `; ${wholeNumber(over)} over the limit`}`;
}

/** The pages by length and kinds of words, with the limit. */
export function pagesModel(gauge: Gauge): PagesModel {
  const { atMost, each } = gauge.pages;
  const longest = each.reduce((most, { words }) => Math.max(most, words), 0);
  const over = each.filter(({ words }) => words > atMost).length;
  const scale = Math.max(longest, atMost, 1);
  const pages = each.map(({ number, words, counts, range }) => {
    return {
      key: String(number),
      label: `Page ${wholeNumber(number)}`,
      figure: `${counted(words, 'word')}${words > atMost ? `, ${wholeNumber(words - atMost)} over` : ''}`,
      over: words > atMost,
      segments: segments(counts, scale),
      place: range,
      readable: words === 0 ? '' : `${percentOf(readableWords(counts), words)} readable`,
    };
  });
  return {
    summary: overSummary(counted(each.length, 'page'), `longest ${counted(longest, 'word')}`, over),
    state: each.length === 0 ? 'none' : over === 0 ? 'met' : 'short',
    limit: atMost / scale,
    limitText: `limit ${counted(atMost, 'word')}`,
    pages: pages.slice(0, mostRows),
    more: leftOut(pages.length, 'more'),
  };
}

/** How long the patterns of the kinds are in a bar that `whole` words would fill. */
export function segments(counts: Gauge['counts'], whole: number): readonly Segment[] {
  return kindTexts.map(({ kind }) => ({ kind, share: whole === 0 ? 0 : counts[kind] / whole }));
}
