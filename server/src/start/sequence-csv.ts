import { namelessLesson } from '../sequence/read-lesson.ts';
import { defaultLimits } from '../sequence/read-limits.ts';
import type { Dimension, Lesson, Sequence, Targets } from '../sequence/sequence.ts';
import { type Cell, csvOf } from '../series/report/csv.ts';

/** What stands in the column of lessons in the row that holds for all of them. */
export const allLessons = '(all lessons)';

/** What stands in a cell of a lesson that mentions a dimension and opens nothing in it. */
export const nothingOpened = 'none';

/** The columns of targets, each headed by the target's key in the file. */
export const targetColumns: readonly (readonly [key: string, name: keyof Targets])[] = [
  ['readable', 'readable'],
  ['sentence', 'sentence'],
  ['page', 'page'],
  ['practice', 'practice'],
  ['repeats', 'repeats'],
  ['story words', 'storyWords'],
];

/**
 * A sequence as a table for a spreadsheet: a row with the title and the targets of all lessons, then a lesson a row. What
 * could be taken for a formula is made plain text. `importSequence` makes the same sequence of it again; only
 * comments are lost.
 */
export function sequenceAsCsv(sequence: Sequence): string {
  const settings = settingsOf(sequence);
  const head: readonly Cell[] = [
    allLessons,
    sequence.title,
    ...['', '', '', '', '', ''],
    ...targetColumns.map(([, name]) => sequence.targets[name]),
    ...(settings === '' ? [] : [settings]),
  ];
  const rows = sequence.lessons.map((lesson) => rowOf(lesson, sequence));
  return csvOf([settings === '' ? columns : [...columns, 'settings'], head, ...rows]);
}

const columns = [
  'lesson',
  'title',
  'spellings',
  'high-frequency words',
  'endings',
  'blends',
  'syllables',
  'punctuation',
  ...targetColumns.map(([key]) => key),
];

function rowOf(lesson: Lesson, sequence: Sequence): readonly Cell[] {
  const opened = (dimension: Dimension, items: readonly string[], separator: string): string =>
    items.length === 0 && lesson.index === 0 && isNeverOpened(dimension, sequence)
      ? nothingOpened
      : items.join(separator);
  return [
    lesson.name === namelessLesson ? '' : lesson.name,
    lesson.title,
    lesson.spellings.map(({ value }) => `${value.letters} as in ${value.keyWord}`).join('; '),
    lesson.highFrequencyWords.map(({ value }) => value).join('; '),
    opened('endings', valuesOf(lesson.endings), '; '),
    opened('blends', valuesOf(lesson.blends), '; '),
    lesson.syllables?.value,
    // Marks are set apart by spaces: a semicolon may be one of them.
    opened('punctuation', valuesOf(lesson.punctuation), ' '),
    ...targetColumns.map(([, name]) => lesson.targets[name]),
  ];
}

function valuesOf(items: readonly { readonly value: string }[]): readonly string[] {
  return items.map(({ value }) => value);
}

function isNeverOpened(dimension: Dimension, { mentions, lessons }: Sequence): boolean {
  return (
    dimension !== 'syllables' &&
    mentions.has(dimension) &&
    lessons.every((lesson) => lesson[dimension].length === 0)
  );
}

/** What few sequences set, a line each. */
function settingsOf({ accent, limits, pronunciations }: Sequence): string {
  const lines = pronunciations.map(
    ({ word, graphemes }) => `pronunciation ${word.value}: ${graphemes.value}`,
  );
  if (accent === 'apart') lines.unshift('cot and caught: apart');
  const isUsual = Object.entries(defaultLimits).every(([name, limit]) => limit === Object(limits)[name]);
  if (!isUsual) {
    lines.unshift(
      `again within: ${limits.againWithin}`,
      `unseen for: ${limits.unseenFor}`,
      `met at least: ${limits.metAtLeast}`,
    );
  }
  return lines.join('\n');
}
