import type { Gauge, ProtocolRange } from '../../../server/src/editor/protocol.ts';
import { readableWords, wordsShort } from '../../../server/src/review/figures.ts';
import type { WordKind } from '../../../server/src/review/review.ts';
import { counted, percentOf, targetPercent, wholeNumber } from './figures.ts';
import { kindTexts } from './kinds.ts';
import { pagesModel, segments, sentencesModel } from './lengths-model.ts';
import { highFrequencyModel, notTaughtModel, spellingsModel } from './lists-model.ts';

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
