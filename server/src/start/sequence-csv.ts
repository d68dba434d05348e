import type { Sequence } from '../sequence/sequence.ts';
import { csvOf } from '../series/report/csv.ts';

/** A sequence as a table, a lesson a row, for a spreadsheet; what could be taken for a formula is made plain text. */
export function sequenceAsCsv({ lessons }: Sequence): string {
  const rows = lessons.map((lesson) => [
    lesson.name,
    lesson.title,
    lesson.spellings.map(({ value }) => `${value.letters} as in ${value.keyWord}`).join('; '),
    lesson.highFrequencyWords.map(({ value }) => value).join('; '),
    lesson.endings.map(({ value }) => value).join('; '),
    lesson.blends.map(({ value }) => value).join('; '),
    lesson.syllables?.value,
    // Marks are set apart by spaces: a semicolon may be one of them.
    lesson.punctuation.map(({ value }) => value).join(' '),
  ]);
  return csvOf([columns, ...rows]);
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
];
