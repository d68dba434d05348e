import { layOutBook } from './book/lay-out-book.ts';
import type { LaidOut, LayoutTools } from './layout/laid-out.ts';
import type { PrintOrder } from './order.ts';
import { layOutSheets } from './sheets/lay-out-sheets.ts';

/** Lays out an order of at least one story: every page with every mark in its place. Problems come in the stories' order. */
export function layOut(order: PrintOrder, tools: LayoutTools): LaidOut {
  const laidOut =
    order.material === 'book' ? layOutBook(order, tools) : layOutSheets(order, order.material, tools);
  const problems = [...laidOut.problems].sort((one, other) => one.story - other.story);
  return { ...laidOut, problems };
}
