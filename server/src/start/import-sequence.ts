import type { Phonics } from '../phonics/phonics.ts';
import { plainCell } from '../series/report/csv.ts';
import type { Problem } from '../text/problem.ts';
import { type ColumnUse, isTarget } from './column-uses.ts';
import { blendsIn, endingsIn, type ListRead, marksIn, wordsIn } from './list-cells.ts';
import type { CsvCell, CsvTable } from './read-csv.ts';
import { allLessons, nothingOpened } from './sequence-csv.ts';
import type { LessonPlan, SequencePlan } from './sequence-plan.ts';
import { createSpellingReader, type SpellingReader } from './spelling-cell.ts';

/** What a table of lessons comes to. */
export interface ImportedSequence {
  readonly plan: SequencePlan;
  /** What was not understood or had to be supplied, at its cell in the table; an `error` stands only as a comment in the plan. */
  readonly problems: readonly Problem[];
}

/**
 * A sequence from a table whose first row has the headings, a lesson a row; `uses` says what each column is taken for.
 * Nothing is lost: what is not understood, and what a note says, becomes a comment at its lesson. Letters without a key word
 * get their usual one, of several sounds the first that is not taught yet.
 */
export function importSequence(
  { rows, problems: broken }: CsvTable,
  uses: readonly ColumnUse[],
  phonics: Pick<Phonics, 'commonSpellings'>,
): ImportedSequence {
  const [headings, ...lessonRows] = rows;
  const problems: Problem[] = [...broken];
  const spellings = createSpellingReader(phonics);
  const names = headings?.cells.map(({ text }) => text.trim()) ?? [];
  let head: Omit<SequencePlan, 'lessons'> = {};
  const lessons: LessonPlan[] = [];
  lessonRows.forEach((row, index) => {
    const cells = row.cells.map(
      (cell, column): PlacedCell => ({
        use: uses[column] ?? 'note',
        heading: names[column] ?? '',
        text: plainCell(cell.text).trim(),
        span: cell.span,
        row: row.number,
      }),
    );
    const report = (cell: PlacedCell, message: string, severity: Problem['severity']): void => {
      problems.push({ message: `Row ${cell.row}: ${message}`, span: cell.span, severity });
    };
    const isHead = index === 0 && cells.some(({ use, text }) => use === 'lesson' && text === allLessons);
    if (isHead) head = headOf(cells, report);
    else lessons.push(lessonOf(cells, lessons.length + 1, spellings, report));
  });
  return { plan: { ...head, lessons }, problems };
}

/** A cell that is in a column of some use. */
interface PlacedCell extends CsvCell {
  readonly use: ColumnUse;
  readonly heading: string;
  readonly row: number;
}

type Report = (cell: PlacedCell, message: string, severity: Problem['severity']) => void;

function lessonOf(
  cells: readonly PlacedCell[],
  count: number,
  spellings: SpellingReader,
  report: Report,
): LessonPlan {
  const remarks: string[] = [];
  const missed = (cell: PlacedCell, text: string): void => {
    remarks.push(`${cell.heading || cell.use}, not understood: ${text}`);
    report(
      cell,
      `“${shortened(text)}” was not understood as ${namesOfUses[cell.use]}; it stands as a comment.`,
      'error',
    );
  };
  const of = (use: ColumnUse): readonly PlacedCell[] =>
    cells.filter((cell) => cell.use === use && cell.text !== '');
  const list = (use: ColumnUse, read: (text: string) => ListRead): readonly string[] | undefined => {
    const found = of(use).map((cell) => {
      if (cell.text.toLowerCase() === nothingOpened) return [];
      const { items, missed: rest } = read(cell.text);
      for (const text of rest) missed(cell, text);
      return items;
    });
    return found.length === 0 ? undefined : found.flat();
  };
  const given = of('lesson')[0];
  const name = given?.text ?? String(count);
  const first = cells[0];
  if (given === undefined && first !== undefined && cells.some(({ use }) => use === 'lesson'))
    report(first, `it names no lesson, so the lesson is named “${name}”.`, 'warning');

  const keyWords = of('key words')
    .flatMap(({ text }) => text.split(/[\s;,/|]+/))
    .filter((word) => word !== '');
  const spellingCells = of('spellings');
  const read = spellings(
    spellingCells.map(({ text }) => text),
    keyWords,
  );
  read.cells.forEach(({ supplied, missed: rest }, index) => {
    const cell = spellingCells[index];
    if (cell === undefined) return;
    for (const text of rest) missed(cell, text);
    if (supplied.length > 0)
      report(
        cell,
        `no key word was given, so the usual one was put in: ${supplied.join(', ')}. See whether that sound is meant.`,
        'warning',
      );
  });
  if (read.unused.length > 0)
    remarks.push(`${of('key words')[0]?.heading || 'more key words'}: ${read.unused.join(', ')}`);

  const lists = {
    spellings: spellingCells.length === 0 ? undefined : read.cells.flatMap(({ items }) => items),
    highFrequencyWords: list('high-frequency words', wordsIn),
    endings: list('endings', endingsIn),
    blends: list('blends', blendsIn),
    punctuation: list('punctuation', marksIn),
  };
  const syllables = numberOf(of('syllables')[0], missed);
  const targets = targetsIn(cells, missed);
  for (const cell of [...of('note'), ...of('settings')])
    remarks.push(`${cell.heading || 'note'}: ${cell.text}`);
  const title = of('title')[0]?.text;
  return {
    name,
    ...(title === undefined ? {} : { title }),
    ...Object.fromEntries(Object.entries(lists).filter(([, items]) => items !== undefined)),
    ...(syllables === undefined ? {} : { syllables }),
    ...(targets === undefined ? {} : { targets }),
    ...(remarks.length === 0 ? {} : { remarks }),
  };
}

function headOf(cells: readonly PlacedCell[], report: Report): Omit<SequencePlan, 'lessons'> {
  const remarks: string[] = [];
  const missed = (cell: PlacedCell, text: string): void => {
    remarks.push(`${cell.heading || cell.use}, not understood for all lessons: ${text}`);
    report(cell, `“${shortened(text)}” cannot hold for all lessons; it stands as a comment.`, 'error');
  };
  let settings: SequencePlan['settings'];
  for (const cell of cells) {
    if (cell.text === '' || cell.use === 'lesson' || cell.use === 'title' || isTarget(cell.use)) continue;
    if (cell.use === 'settings') settings = settingsIn(cell, missed);
    else if (cell.use === 'note') remarks.push(`${cell.heading || 'note'}: ${cell.text}`);
    else if (cell.use !== 'left out') missed(cell, cell.text);
  }
  const targets = targetsIn(cells, missed);
  const title = cells.find(({ use }) => use === 'title')?.text ?? '';
  return {
    ...(title === '' ? {} : { title }),
    ...(targets === undefined ? {} : { targets }),
    ...(settings === undefined ? {} : { settings }),
    ...(remarks.length === 0 ? {} : { remarks }),
  };
}

function settingsIn(
  cell: PlacedCell,
  missed: (cell: PlacedCell, text: string) => void,
): SequencePlan['settings'] {
  const series: Record<string, string> = {};
  const pronunciations: Record<string, string> = {};
  let cot: string | undefined;
  for (const line of cell.text.split(/\r?\n/)) {
    const colon = line.indexOf(':');
    const [key, value] = colon < 0 ? ['', ''] : [line.slice(0, colon), line.slice(colon + 1).trim()];
    const word = /^pronunciation (.+)$/.exec(key)?.[1];
    if (word !== undefined) pronunciations[word] = value;
    else if (['again within', 'unseen for', 'met at least'].includes(key)) series[key] = value;
    else if (key === 'cot and caught') cot = value;
    else if (line.trim() !== '') missed(cell, line);
  }
  return {
    ...(cot === undefined ? {} : { 'cot and caught': cot }),
    ...(Object.keys(series).length === 0 ? {} : { series }),
    ...(Object.keys(pronunciations).length === 0 ? {} : { pronunciations }),
  };
}

function targetsIn(
  cells: readonly PlacedCell[],
  missed: (cell: PlacedCell, text: string) => void,
): Readonly<Record<string, number>> | undefined {
  const targets = cells.flatMap((cell): [string, number][] => {
    const figure = isTarget(cell.use) ? numberOf(cell, missed) : undefined;
    return figure === undefined ? [] : [[cell.use, figure]];
  });
  return targets.length === 0 ? undefined : Object.fromEntries(targets);
}

/** A figure, perhaps with a comma for its point and a unit behind it: `95`, `95,5 %`, `2 syllables`. */
function numberOf(
  cell: PlacedCell | undefined,
  missed: (cell: PlacedCell, text: string) => void,
): number | undefined {
  if (cell === undefined || cell.text === '') return undefined;
  const figure = /^(\d{1,6}(?:[.,]\d{1,4})?)\s*(?:%|\p{L}*)$/u.exec(cell.text)?.[1];
  if (figure !== undefined) return Number(figure.replace(',', '.'));
  missed(cell, cell.text);
  return undefined;
}

function shortened(text: string): string {
  return text.length <= 60 ? text : `${text.slice(0, 59)}…`;
}

const namesOfUses: Readonly<Record<ColumnUse, string>> = {
  lesson: 'the name of a lesson',
  title: 'a title',
  spellings: 'a spelling',
  'key words': 'a key word',
  'high-frequency words': 'a high-frequency word',
  endings: 'an ending',
  blends: 'a place of blends (start, end or three)',
  syllables: 'a number of syllables',
  punctuation: 'a punctuation mark',
  readable: 'a percentage',
  sentence: 'a number of words',
  page: 'a number of words',
  practice: 'a number of words',
  repeats: 'a number of times',
  'story words': 'a number of story words',
  settings: 'a setting',
  note: 'a note',
  'left out': 'anything',
};
