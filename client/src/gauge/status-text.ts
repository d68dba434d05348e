import type { Gauge } from '../../../server/src/editor/protocol.ts';
import { readableWords } from '../../../server/src/review/figures.ts';
import { counted, percentOf, targetPercent, wholeNumber } from './figures.ts';
import { kindTexts } from './kinds.ts';
import type { GaugeState } from './messages.ts';

/** What the status bar shows; plain text but for the icon at its head. */
export interface StatusText {
  /** With one codicon: `$(check) 96.0 % readable`. */
  readonly text: string;
  /** The same for a screen reader. */
  readonly label: string;
  readonly tooltip: StatusTooltip;
  /** True when a click should start the server again instead of opening the gauge. */
  readonly restarts: boolean;
}

/** The counts behind the figure: a title, rows of label and figures, and closing lines. Plain text throughout. */
export interface StatusTooltip {
  readonly title: string;
  readonly rows: readonly { readonly label: string; readonly count: string; readonly share: string }[];
  readonly lines: readonly string[];
}

/** The status item for a file, or nothing where it should stay away: no story, nothing known yet. */
export function statusText(state: GaugeState): StatusText | undefined {
  switch (state.kind) {
    case 'gauge':
      return gaugeStatus(state.gauge);
    case 'stopped':
      return withoutGauge(
        '$(warning) Battledore stopped',
        'Battledore stopped. Click to start it again.',
        true,
      );
    case 'no-gauge':
      return state.reason === 'not-a-story'
        ? undefined
        : withoutGauge(`$(book) ${reasonTexts[state.reason]}`, state.message, false);
    default:
      return undefined;
  }
}

const reasonTexts = {
  'no-sequence': 'No sequence',
  'no-such-lesson': 'No such lesson',
  'too-large': 'Too large to check',
} as const;

function gaugeStatus(gauge: Gauge): StatusText {
  const { text, label } = headline(gauge);
  return { text, label, tooltip: tooltip(gauge), restarts: false };
}

function headline(gauge: Gauge): { text: string; label: string } {
  const { counts } = gauge;
  if (counts.words === 0) return { text: '$(book) No words yet', label: 'Battledore: no words yet' };
  const figure = percentOf(readableWords(counts), counts.words);
  const target = targetPercent(gauge.target);
  if (gauge.readable < gauge.target)
    return {
      text: `$(arrow-down) ${figure} readable, under ${target}`,
      label: `${figure} of the words are readable, under the target of ${target}`,
    };
  const reached = `${figure} of the words are readable, the target of ${target} is reached`;
  if (gauge.passes) return { text: `$(check) ${figure} readable`, label: reached };
  const findings = counted(gauge.findings, 'finding');
  return { text: `$(book) ${figure} readable, ${findings}`, label: `${reached}, ${findings}` };
}

function tooltip(gauge: Gauge): StatusTooltip {
  const { counts, lesson } = gauge;
  const lessonText = lesson.title ? `${lesson.name}: ${lesson.title}` : lesson.name;
  return {
    title: `${gauge.title || 'Untitled story'}, lesson ${lessonText}`,
    rows: [
      ...kindTexts.map(({ kind, label }) => ({
        label,
        count: wholeNumber(counts[kind]),
        share: percentOf(counts[kind], counts.words),
      })),
      { label: 'Running words', count: wholeNumber(counts.words), share: '' },
    ],
    lines: [
      ...(gauge.isCut ? ['Too long: only the beginning of the text is read.'] : []),
      `Readable: decodable and high-frequency words, ${percentOf(readableWords(counts), counts.words)}. Target ${targetPercent(gauge.target)}.`,
      gauge.findings === 0 ? 'No findings.' : `${counted(gauge.findings, 'finding')} in Problems.`,
    ],
  };
}

function withoutGauge(text: string, message: string, restarts: boolean): StatusText {
  return {
    text,
    label: `Battledore: ${message}`,
    tooltip: { title: message, rows: [], lines: [] },
    restarts,
  };
}
