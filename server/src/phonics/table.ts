/**
 * The rows of one of our tab-separated tables: lines that begin with `#` are notes, the first other line names the
 * columns, and a row that is short has empty cells at its end.
 */
export function rowsOf<Column extends string>(
  text: string,
  columns: readonly Column[],
): readonly Readonly<Record<Column, string>>[] {
  const lines = text.split('\n').filter((line) => line.trim() !== '' && !line.startsWith('#'));
  const [head = '', ...rows] = lines;
  const names = head.split('\t');
  const places = columns.map((column) => {
    const place = names.indexOf(column);
    if (place < 0) throw new Error(`The table has no column “${column}”: ${head}`);
    return place;
  });
  return rows.map((row) => {
    const cells = row.split('\t');
    return Object.fromEntries(
      columns.map((column, index) => [column, cells[places[index] ?? -1] ?? '']),
    ) as Record<Column, string>;
  });
}
