import { append, setAttribute } from '../../view/dom.ts';
import type { CellModel, GridModel } from '../model.ts';
import { edgesOf, evenlySeen, isWithin, type Seen, seenBetween } from '../window-of.ts';

/** Opens what a cell leads to. */
export type Open = (opens: NonNullable<CellModel['opens']>) => void;

/** The height of a row, in CSS pixels; the style sheet has it too. */
const rowHeight = 24;

/** Rows and columns that are drawn beyond those in sight. */
const spareRows = 8;
const spareColumns = 6;

/**
 * A table of any size, of which only the cells in sight are on the page. One stop of the Tab key; arrow keys, Home, End, Page
 * Up and Page Down move in it (with Control to the ends), Enter or a click opens what a cell leads to. Row 0 is the head.
 *
 * @returns a function that shows another version of the table and keeps place and focus.
 */
export function appendGrid(parent: Element, label: string, open: Open): (model: GridModel) => void {
  const grid = append(parent, 'div', 'grid');
  grid.setAttribute('role', 'grid');
  grid.setAttribute('aria-label', label);
  grid.setAttribute('aria-readonly', 'true');
  grid.tabIndex = -1;
  const sheet = append(grid, 'div', 'sheet');
  sheet.setAttribute('role', 'rowgroup');
  let model: GridModel = { columns: [], rows: 0, cell: () => ({ text: '' }) };
  let edges: readonly number[] = [0];
  let drawn: { readonly rows: Seen; readonly columns: Seen } | undefined;
  /** Row 0 is the head, the rows of the model come after it. */
  let active = { row: 1, column: 0 };
  let isWaiting = false;

  const cellAt = (row: number, column: number): CellModel =>
    (row === 0 ? model.columns[column] : model.cell(row - 1, column)) ?? { text: '' };

  const inSight = (spare: boolean): { readonly rows: Seen; readonly columns: Seen } => {
    const beside = edges[1] ?? 0;
    const width = Math.max(0, grid.clientWidth - beside);
    const height = Math.max(0, grid.clientHeight - rowHeight);
    return {
      rows: evenlySeen(grid.scrollTop, height, rowHeight, model.rows, spare ? spareRows : 0),
      columns: seenBetween(edges, grid.scrollLeft + beside, width, spare ? spareColumns : 0),
    };
  };

  const draw = (): void => {
    const seen = inSight(true);
    const hadFocus = grid.contains(document.activeElement);
    const parts = document.createDocumentFragment();
    parts.append(rowElement(0, seen.columns));
    for (let row = seen.rows.first; row <= seen.rows.last; row++) {
      parts.append(rowElement(row + 1, seen.columns));
    }
    sheet.replaceChildren(parts);
    drawn = seen;
    settle(hadFocus);
  };

  const rowElement = (row: number, { first, last }: Seen): HTMLElement => {
    const element = document.createElement('div');
    element.className = row === 0 ? 'row head' : 'row';
    element.setAttribute('role', 'row');
    element.setAttribute('aria-rowindex', String(row + 1));
    element.style.width = `${edges.at(-1)}px`;
    if (row > 0) element.style.top = `${row * rowHeight}px`;
    element.append(cellElement(row, 0));
    for (let column = Math.max(1, first); column <= last; column++) element.append(cellElement(row, column));
    return element;
  };

  const cellElement = (row: number, column: number): HTMLElement => {
    const { text, name, className = '', opens } = cellAt(row, column);
    const element = document.createElement('div');
    element.className = `cell ${className}${column === 0 ? ' name' : ''}${opens === undefined ? '' : ' opens'}`;
    element.setAttribute('role', row === 0 ? 'columnheader' : column === 0 ? 'rowheader' : 'gridcell');
    element.setAttribute('aria-colindex', String(column + 1));
    if (name !== undefined) element.setAttribute('aria-label', name);
    element.textContent = text;
    element.dataset.row = String(row);
    element.dataset.column = String(column);
    element.style.width = `${model.columns[column]?.width ?? 0}px`;
    if (column > 0) element.style.left = `${edges[column]}px`;
    element.tabIndex = -1;
    return element;
  };

  const elementAt = ({ row, column }: typeof active): HTMLElement | null =>
    sheet.querySelector(`[data-row="${row}"][data-column="${column}"]`);

  /** The active cell, or the grid while that cell is out of sight, can take the focus. */
  const settle = (takesFocus: boolean): void => {
    const element = elementAt(active);
    for (const other of sheet.querySelectorAll('[tabindex="0"]')) {
      if (other !== element) (other as HTMLElement).tabIndex = -1;
    }
    grid.tabIndex = element === null ? 0 : -1;
    if (element !== null) element.tabIndex = 0;
    if (takesFocus) (element ?? grid).focus({ preventScroll: true });
  };

  const moveTo = (row: number, column: number): void => {
    active = {
      row: Math.max(0, Math.min(model.rows, row)),
      column: Math.max(0, Math.min(model.columns.length - 1, column)),
    };
    bringIntoSight();
    if (drawn === undefined || !isDrawn()) draw();
    settle(true);
  };

  const isDrawn = (): boolean => {
    const seen = inSight(false);
    return drawn !== undefined && isWithin(seen.rows, drawn.rows) && isWithin(seen.columns, drawn.columns);
  };

  const bringIntoSight = (): void => {
    const { row, column } = active;
    const beside = edges[1] ?? 0;
    if (row > 0) {
      const top = (row - 1) * rowHeight;
      const height = grid.clientHeight - 2 * rowHeight;
      if (top < grid.scrollTop) grid.scrollTop = top;
      else if (top > grid.scrollTop + height) grid.scrollTop = top - height;
    }
    if (column > 0) {
      const left = (edges[column] ?? 0) - beside;
      const right = (edges[column + 1] ?? 0) - grid.clientWidth;
      if (left < grid.scrollLeft) grid.scrollLeft = left;
      else if (right > grid.scrollLeft) grid.scrollLeft = right;
    }
  };

  const activate = ({ row, column }: typeof active): void => {
    const { opens } = cellAt(row, column);
    if (opens !== undefined) open(opens);
  };

  grid.addEventListener('keydown', (event) => {
    const page = Math.max(1, Math.floor(grid.clientHeight / rowHeight) - 2);
    const to = target(event, active, { rows: model.rows, columns: model.columns.length, page });
    if (to !== undefined) {
      event.preventDefault();
      moveTo(to.row, to.column);
    } else if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault();
      activate(active);
    }
  });
  grid.addEventListener('click', ({ target: clicked }) => {
    const place = placeOf(clicked);
    if (place === undefined) return;
    moveTo(place.row, place.column);
    activate(place);
  });
  grid.addEventListener('pointerover', ({ target: pointed }) => {
    const place = placeOf(pointed);
    // Hints are many and few are read, so each is made when the pointer comes.
    if (place !== undefined && pointed instanceof HTMLElement) {
      setAttribute(pointed, 'title', cellAt(place.row, place.column).hint);
    }
  });
  const drawIfNeeded = (): void => {
    isWaiting = false;
    if (!isDrawn()) draw();
  };
  const drawSoon = (): void => {
    if (isWaiting) return;
    isWaiting = true;
    requestAnimationFrame(drawIfNeeded);
  };
  grid.addEventListener('scroll', drawSoon, { passive: true });
  new ResizeObserver(drawSoon).observe(grid);

  return (next) => {
    model = next;
    edges = edgesOf(next.columns.map(({ width }) => width));
    setAttribute(grid, 'aria-rowcount', String(next.rows + 1));
    setAttribute(grid, 'aria-colcount', String(next.columns.length));
    sheet.style.width = `${edges.at(-1)}px`;
    sheet.style.height = `${(next.rows + 1) * rowHeight}px`;
    active = {
      row: Math.min(active.row, next.rows),
      column: Math.min(active.column, Math.max(0, next.columns.length - 1)),
    };
    draw();
  };
}

function placeOf(element: EventTarget | null): { readonly row: number; readonly column: number } | undefined {
  if (!(element instanceof HTMLElement) || element.dataset.row === undefined) return undefined;
  return { row: Number(element.dataset.row), column: Number(element.dataset.column) };
}

function target(
  { key, ctrlKey, metaKey }: KeyboardEvent,
  { row, column }: { readonly row: number; readonly column: number },
  { rows, columns, page }: { readonly rows: number; readonly columns: number; readonly page: number },
): { readonly row: number; readonly column: number } | undefined {
  const isFar = ctrlKey || metaKey;
  switch (key) {
    case 'ArrowDown':
      return { row: isFar ? rows : row + 1, column };
    case 'ArrowUp':
      return { row: isFar ? 0 : row - 1, column };
    case 'ArrowRight':
      return { row, column: isFar ? columns - 1 : column + 1 };
    case 'ArrowLeft':
      return { row, column: isFar ? 0 : column - 1 };
    case 'PageDown':
      return { row: row + page, column };
    case 'PageUp':
      return { row: row - page, column };
    case 'Home':
      return { row: isFar ? 0 : row, column: 0 };
    case 'End':
      return { row: isFar ? rows : row, column: columns - 1 };
    default:
      return undefined;
  }
}
