import { printBook } from './book/print-book.ts';
import type { Printed, PrintOrder } from './order.ts';
import { printSheets } from './sheets/print-sheets.ts';

/**
 * Prints an order of at least one story as a PDF. Pure: the same order gives the same bytes, on any machine and day.
 * Problems (a picture that cannot be used, letters the face lacks) never stop it: an empty frame or box stands in.
 */
export function print(order: PrintOrder): Printed {
  const printed = order.material === 'book' ? printBook(order) : printSheets(order, order.material);
  const problems = [...printed.problems].sort((one, other) => one.story - other.story);
  return { ...printed, problems };
}
