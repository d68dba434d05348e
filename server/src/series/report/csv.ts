/** A cell of a table: a text, a figure, or nothing. */
export type Cell = string | number | undefined;

/**
 * A table as CSV that spreadsheets open as it is meant: RFC 4180 with CRLF, behind a byte-order mark by which they know
 * that it is UTF-8. A text that a spreadsheet would take for a formula (it begins with = + - @, a tab or a line end) gets an
 * apostrophe in front, so that a title or a word never does anything; so does a text that has one there already, so that
 * `plainCell` can take it away again. Figures have at most four decimals.
 */
export function csvOf(rows: readonly (readonly Cell[])[]): string {
  return `\ufeff${rows.map((row) => row.map(written).join(',')).join('\r\n')}\r\n`;
}

/** The text that a cell had before `csvOf` made it safe. */
export function plainCell(cell: string): string {
  return cell.startsWith("'") && isGuarded(cell.slice(1)) ? cell.slice(1) : cell;
}

/** Full-width signs are taken for the plain ones in some languages. */
function isGuarded(text: string): boolean {
  return /^'*\s*[=+\-@\t\r\n＝＋－＠]/.test(text);
}

function written(cell: Cell): string {
  if (cell === undefined) return '';
  if (typeof cell === 'number')
    return Number.isFinite(cell) ? String(Math.round(cell * 10_000) / 10_000) : '';
  const safe = isGuarded(cell) ? `'${cell}` : cell;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
