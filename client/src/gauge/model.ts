import type { Gauge, ProtocolRange } from '../../../server/src/editor/protocol.ts';
import { readableWords, wordsShort } from '../../../server/src/review/figures.ts';
import type { WordKind } from '../../../server/src/review/review.ts';
import { counted, percentOf, targetPercent, wholeNumber } from './figures.ts';
import { kindTexts } from './kinds.ts';

/** What the gauge view draws: every text and every length is settled here, the view only puts it on the page. */
export interface GaugeModel {
  readonly uri: string;
  readonly title: string;
  /** `Lesson 12: igh as in light`. */
  readonly lesson: string;
  /** That the sequence itself has problems; empty when it has none. */
  readonly sequence: string;
  readonly readable: ReadableModel;
  readonly kinds: readonly KindRow[];
  readonly notTaught: ListModel;
  readonly spellings: ListModel;
  readonly highFrequencyWords: ListModel;
  readonly sentences: ColumnsModel;
  readonly pages: PagesModel;
}

/** The one figure that matters most, with its verdict in words. */
export interface ReadableModel {
  readonly figure: string;
  readonly state: 'reached' | 'under' | 'no-words';
  readonly verdict: string;
  /** The target as a share, and as text. */
  readonly target: number;
  readonly targetText: string;
  /** Shares of the running words in drawing order; together 1 when there are words. */
  readonly segments: readonly Segment[];
  /** The same in words, for those who do not see it. */
  readonly description: string;
  /** `3 findings`, or that all is met. */
  readonly findings: string;
  readonly hasFindings: boolean;
}

/** A length of one kind's pattern. */
export interface Segment {
  readonly kind: WordKind;
  readonly share: number;
}

/** A row of the table of kinds. */
export interface KindRow {
  readonly kind: WordKind;
  readonly label: string;
  readonly count: string;
  readonly share: string;
}

/** A list of things with places in the story. */
export interface ListModel {
  /** A sentence on the whole list. */
  readonly summary: string;
  readonly state: ItemState;
  readonly items: readonly Item[];
  /** Says how many rows were left out; empty when none was. */
  readonly more: string;
}

/** Whether what was asked for is there; `none` where nothing is asked. */
export type ItemState = 'met' | 'short' | 'none';

/** A thing with its places; activating it again goes on to its next place. */
export interface Item {
  /** The same thing in the next version of the story has the same key. */
  readonly key: string;
  readonly label: string;
  /** A quieter second line; may be empty. */
  readonly detail: string;
  /** The figure at the end of the row. */
  readonly figure: string;
  readonly state: ItemState;
  /** Uses as dots: filled ones, and those still wanting; none are drawn when both are 0. */
  readonly dots: { readonly filled: number; readonly empty: number };
  /** Empty for a thing that is not in the story. */
  readonly places: readonly ProtocolRange[];
}

/** Sentence lengths. */
export interface ColumnsModel {
  readonly summary: string;
  readonly state: ItemState;
  /** The limit as a share of the chart's height. */
  readonly limit: number;
  readonly limitText: string;
  readonly columns: readonly {
    readonly key: string;
    readonly words: number;
    /** Share of the chart's height. */
    readonly height: number;
    readonly over: boolean;
    readonly place: ProtocolRange;
    /** The whole column in words. */
    readonly description: string;
  }[];
  readonly more: string;
}

/** Page by page. */
export interface PagesModel {
  readonly summary: string;
  readonly state: ItemState;
  /** The limit as a share of the chart's width. */
  readonly limit: number;
  readonly limitText: string;
  readonly pages: readonly {
    readonly key: string;
    readonly label: string;
    readonly figure: string;
    readonly over: boolean;
    /** Shares of the chart's width. */
    readonly segments: readonly Segment[];
    readonly place: ProtocolRange;
    /** `92.8 % readable`, for those who do not see the bar; empty for a page without words. */
    readonly readable: string;
  }[];
  readonly more: string;
}

/** More rows than this are not drawn; the rest is counted in `more`. */
export const mostRows = 200;

/** The view of one gauge. */
export function gaugeModel(gauge: Gauge): GaugeModel {
  return {
    uri: gauge.uri,
    title: gauge.title || 'Untitled story',
    lesson: `Lesson ${gauge.lesson.name}${gauge.lesson.title ? `: ${gauge.lesson.title}` : ''}`,
    sequence: sequenceText(gauge),
    readable: readableModel(gauge),
    kinds: kindTexts.map(({ kind, label }) => ({
      kind,
      label,
      count: wholeNumber(gauge.counts[kind]),
      share: percentOf(gauge.counts[kind], gauge.counts.words),
    })),
    notTaught: notTaughtModel(gauge),
    spellings: spellingsModel(gauge),
    highFrequencyWords: highFrequencyModel(gauge),
    sentences: sentencesModel(gauge),
    pages: pagesModel(gauge),
  };
}

function sequenceText({ sequenceProblems }: Gauge): string {
  if (sequenceProblems === undefined) return '';
  const { count, errors } = sequenceProblems;
  const what = errors === 0 ? counted(count, 'problem') : counted(errors, 'error');
  return `The sequence has ${what}; show ${(errors || count) === 1 ? 'it' : 'the first'}`;
}

function readableModel(gauge: Gauge): ReadableModel {
  const { counts, target } = gauge;
  const figure = percentOf(readableWords(counts), counts.words);
  const targetText = targetPercent(target);
  const missing = wordsShort(counts, target * 100);
  const state = counts.words === 0 ? 'no-words' : gauge.readable < target ? 'under' : 'reached';
  const verdict = {
    'no-words': 'No words yet',
    reached: `Target of ${targetText} reached`,
    under: `Under the target of ${targetText}: ${counted(missing, 'more readable word')} would reach it`,
  }[state];
  return {
    figure,
    state,
    verdict: gauge.isCut ? `Too long: only the beginning of the text is read. ${verdict}` : verdict,
    target,
    targetText,
    segments: segments(counts, counts.words),
    description: `${figure} of ${counted(counts.words, 'running word')} readable, target ${targetText}`,
    findings: gauge.findings === 0 ? '' : `${counted(gauge.findings, 'finding')} in Problems`,
    hasFindings: gauge.findings > 0,
  };
}

function segments(counts: Gauge['counts'], whole: number): readonly Segment[] {
  return kindTexts.map(({ kind }) => ({ kind, share: whole === 0 ? 0 : counts[kind] / whole }));
}

function notTaughtModel(gauge: Gauge): ListModel {
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

const noDots = { filled: 0, empty: 0 };
/** A row of more dots than this says less than the figure beside it. */
const mostDots = 10;

function spellingsModel(gauge: Gauge): ListModel {
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

function highFrequencyModel(gauge: Gauge): ListModel {
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

function leftOut(count: number, what: string): string {
  return count > mostRows ? `and ${wholeNumber(count - mostRows)} ${what}` : '';
}

function sentencesModel(gauge: Gauge): ColumnsModel {
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

function pagesModel(gauge: Gauge): PagesModel {
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
