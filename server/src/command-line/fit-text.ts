import type { Fit, HeldBack, LessonFit, UnreadWord } from '../fit/fit.ts';
import { shownPercent } from '../review/figures.ts';
import { counted, lessonLabel, missingLabel } from '../review/wording.ts';
import type { FittedText } from './fit.ts';
import type { Host } from './host.ts';
import { type Styles, styled } from './styled.ts';

/** What `fit` writes for people: a line for each lesson, where the text first fits, and what holds it back. */
export function fitPage({ path, fit, heldBack }: FittedText, { hasColour }: Host): string {
  const style = styled(hasColour);
  return [
    `${style.strong(path)}  ${counted(fit.words, 'word')}, ${fit.differentWords} different`,
    '',
    ...lessonLines(fit.lessons, style),
    '',
    verdict(fit),
    ...(heldBack === undefined || heldBack.words.length === 0 ? [] : ['', ...heldBackLines(heldBack, style)]),
    '',
  ].join('\n');
}

const barLength = 40;

function lessonLines(lessons: readonly LessonFit[], style: Styles): readonly string[] {
  const width = Math.max(...lessons.map(({ lesson }) => lessonLabel(lesson).length));
  return lessons.map(({ lesson, readable, reachesTarget }) => {
    const bar = '█'.repeat(Math.floor(readable * barLength + 1e-9)).padEnd(barLength, '·');
    const mark = reachesTarget ? style.good('fits') : '';
    return `  ${lessonLabel(lesson).padEnd(width)}  ${shownPercent(readable).padStart(5)} %  ${bar}  ${mark}`.trimEnd();
  });
}

function verdict({ first, lasting, lessons }: Fit): string {
  if (first === undefined) {
    const last = lessons.at(-1);
    if (last === undefined) return 'The sequence has no lessons.';
    return `It fits no lesson: even at ${lessonLabel(last.lesson)} only ${shownPercent(last.readable)} % of its words are readable; the target is ${percent(last.target)} %.`;
  }
  const share = `${shownPercent(first.readable)} % of its words are readable; the target is ${percent(first.target)} %`;
  const fits = `It first fits ${lessonLabel(first.lesson)}: ${share}.`;
  if (lasting === first) return fits;
  return lasting === undefined
    ? `${fits} Later targets are higher, and it misses them.`
    : `${fits} Later targets are higher; from ${lessonLabel(lasting.lesson)} on it reaches all.`;
}

function heldBackLines({ fit, things, declared, never }: HeldBack, style: Styles): readonly string[] {
  const rows = things
    .slice(0, 8)
    .map(({ missing, rise, words: needing }) => [
      missingLabel(missing),
      missing.lesson === undefined ? 'no lesson' : lessonLabel(missing.lesson),
      rise > 0 ? `+${shownPercent(rise)} %` : 'with more',
      shownWords(needing),
    ]);
  const widths = [0, 1, 2].map((column) => Math.max(0, ...rows.map((row) => row[column]?.length ?? 0)));
  return [
    style.strong(
      `What holds it back at ${lessonLabel(fit.lesson)}, ${shownPercent(fit.readable)} % readable`,
    ),
    ...rows.map(
      ([label = '', lesson = '', rise = '', needing = '']) =>
        `  ${label.padEnd(widths[0] ?? 0)}  ${lesson.padEnd(widths[1] ?? 0)}  ${rise.padStart(widths[2] ?? 0)}  ${needing}`,
    ),
    ...(things.length > 8
      ? [`  and ${counted(things.length - 8, 'more spelling or form', 'more spellings or forms')}`]
      : []),
    ...(declared.length === 0
      ? []
      : [`Names and story words count in the whole only: ${shownWords(declared)}.`]),
    ...(never.length === 0
      ? []
      : [
          `Readable at no lesson: ${shownWords(never)}. Names and story words are declared in the front matter.`,
        ]),
  ];
}

/** The most frequent words with their counts: `night ×3, light`. */
function shownWords(words: readonly UnreadWord[]): string {
  const shown = words.slice(0, 6).map(({ text, count }) => (count === 1 ? text : `${text} ×${count}`));
  const rest = words.length - shown.length;
  return rest > 0 ? `${shown.join(', ')} and ${rest} more` : shown.join(', ');
}

function percent(share: number): string {
  return String(Math.round(share * 10_000) / 100);
}
