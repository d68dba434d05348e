import { TextDocument } from 'vscode-languageserver-textdocument';
import type { Phonics } from '../../phonics/phonics.ts';
import { guessColumns } from '../../start/column-uses.ts';
import { importSequence } from '../../start/import-sequence.ts';
import { readCsv } from '../../start/read-csv.ts';
import { sequenceText } from '../../start/write-sequence.ts';
import type { ImportSequenceAnswer, ImportSequenceParams } from './protocol.ts';

/** A table of lessons as a sequence, its columns taken as asked or as their headings say. */
export function importAnswer({ text, uses }: ImportSequenceParams, phonics: Phonics): ImportSequenceAnswer {
  const table = readCsv(text);
  const width = table.rows.reduce((most, { cells }) => Math.max(most, cells.length), 0);
  const headings = Array.from(
    { length: width },
    (_, index) => table.rows[0]?.cells[index]?.text.trim() ?? '',
  );
  const taken = uses ?? guessColumns(headings);
  const { plan, problems } = importSequence(table, taken, phonics);
  const document = TextDocument.create('', 'csv', 0, text);
  return {
    columns: headings.map((heading, index) => ({
      heading,
      use: taken[index] ?? 'note',
      example:
        table.rows
          .slice(1)
          .map(({ cells }) => cells[index]?.text.trim() ?? '')
          .find((each) => each !== '') ?? '',
    })),
    lessons: plan.lessons.length,
    problems: problems.map(({ message, severity, span }) => ({
      message,
      severity,
      range: { start: document.positionAt(span.start), end: document.positionAt(span.end) },
    })),
    sequence: sequenceText(plan),
  };
}
