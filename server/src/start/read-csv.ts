import type { Problem } from '../text/problem.ts';
import type { Span } from '../text/span.ts';

/** A cell with its place in the file. */
export interface CsvCell {
  /** Without the quotes around it. */
  readonly text: string;
  /** Offsets of the file, quotes included. */
  readonly span: Span;
}

/** A table as a spreadsheet has saved it. */
export interface CsvTable {
  readonly separator: ',' | ';' | '\t';
  /** Rows with something in them; `number` counts all rows from 1, as the spreadsheet does. */
  readonly rows: readonly { readonly number: number; readonly cells: readonly CsvCell[] }[];
  readonly problems: readonly Problem[];
}

/**
 * Reads a table of RFC 4180 as spreadsheets of any country save it: separated by commas, semicolons or tabs, with or
 * without a byte-order mark and a first line `sep=;`, with any line ends. Never fails; a quotation mark that is not closed
 * is a problem.
 */
export function readCsv(text: string): CsvTable {
  const start = text.startsWith('\ufeff') ? 1 : 0;
  const named = /^sep=([,;\t])(?:\r\n|\r|\n|$)/i.exec(text.slice(start, start + 8));
  const separator = isSeparator(named?.[1]) ? named[1] : likeliestSeparator(text.slice(start));
  const problems: Problem[] = [];
  const rows: { number: number; cells: CsvCell[] }[] = [];
  let number = named === null ? 1 : 2;
  let at = start + (named?.[0].length ?? 0);
  while (at < text.length) {
    const cells: CsvCell[] = [];
    for (;;) {
      const { cell, isOpen } = cellAt(text, at, separator);
      cells.push(cell);
      at = cell.span.end;
      if (isOpen) {
        const message =
          'A quotation mark is opened here and never closed, so the rest of the file is one cell.';
        problems.push({
          message,
          span: { start: cell.span.start, end: cell.span.start + 1 },
          severity: 'error',
        });
      }
      if (text[at] !== separator) break;
      at += 1;
    }
    at += text.startsWith('\r\n', at) ? 2 : 1;
    if (cells.some((cell) => cell.text.trim() !== '')) rows.push({ number, cells });
    number += 1;
  }
  return { separator, rows, problems };
}

/** The cell that begins at an offset, up to its separator or the end of its row. */
function cellAt(text: string, start: number, separator: string): { cell: CsvCell; isOpen: boolean } {
  let content = '';
  let at = start;
  let isOpen = false;
  if (text[at] === '"') {
    isOpen = true;
    at += 1;
    while (at < text.length && isOpen) {
      const quote = text.indexOf('"', at);
      const end = quote === -1 ? text.length : quote;
      content += text.slice(at, end);
      at = end;
      if (quote === -1) break;
      if (text[quote + 1] === '"') {
        content += '"';
        at = quote + 2;
      } else {
        at = quote + 1;
        isOpen = false;
      }
    }
  }
  // Without quotes around it, or behind them, everything up to the next separator belongs to the cell.
  const from = at;
  while (at < text.length && text[at] !== separator && text[at] !== '\n' && text[at] !== '\r') at += 1;
  return { cell: { text: content + text.slice(from, at), span: { start, end: at } }, isOpen };
}

const separators = ['\t', ';', ','] as const;

function isSeparator(sign: string | undefined): sign is CsvTable['separator'] {
  return separators.some((separator) => separator === sign);
}

/** The one that stands most often in the first row, outside quotes; of equals the one that lists in cells seldom have. */
function likeliestSeparator(text: string): CsvTable['separator'] {
  const counts = new Map<string, number>();
  let isQuoted = false;
  for (const sign of text) {
    if (sign === '"') isQuoted = !isQuoted;
    else if (!isQuoted && (sign === '\n' || sign === '\r')) {
      if (counts.size > 0) break;
    } else if (!isQuoted) counts.set(sign, (counts.get(sign) ?? 0) + 1);
  }
  let likeliest: CsvTable['separator'] = ',';
  for (const separator of separators) {
    if ((counts.get(separator) ?? 0) > (counts.get(likeliest) ?? 0)) likeliest = separator;
  }
  return likeliest;
}
