/** A row that is on the page. */
export interface Row<T> {
  readonly element: HTMLElement;
  /** Brings the row to a new value of the same thing. */
  update(value: T): void;
}

/**
 * Keeps the rows of a list in step with its values: a thing that stays keeps its element, and with it focus and
 * place. When the row with the focus goes, the focus moves to its neighbour, or to `fallback` when the list is empty.
 *
 * @returns a function that brings the list to new values; their keys have to be different.
 */
export function keyedRows<T extends { readonly key: string }>(
  list: HTMLElement,
  fallback: HTMLElement,
  create: () => Row<T>,
): (values: readonly T[]) => void {
  const rows = new Map<string, Row<T>>();
  return (values) => {
    const kept = new Set(values.map(({ key }) => key));
    for (const [key, row] of rows) {
      if (kept.has(key)) continue;
      rows.delete(key);
      remove(row.element, fallback);
    }
    let before: ChildNode | null = list.firstChild;
    for (const value of values) {
      const row = rows.get(value.key) ?? create();
      rows.set(value.key, row);
      row.update(value);
      if (row.element === before) before = before.nextSibling;
      else list.insertBefore(row.element, before);
    }
  };
}

function remove(element: HTMLElement, fallback: HTMLElement): void {
  if (element.contains(document.activeElement)) {
    const neighbour = element.nextElementSibling ?? element.previousElementSibling;
    (neighbour?.querySelector('button') ?? fallback).focus();
  }
  element.remove();
}
