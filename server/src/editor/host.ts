import type { FontBytes } from '../materials/layout/font-files.ts';
import type { Printed, PrintOrder } from '../materials/order.ts';
import type { Previewer } from '../materials/preview/previewer.ts';
import type { Phonics } from '../phonics/phonics.ts';
import type { SeriesReport } from '../series/report/series-report.ts';
import type { Thesaurus } from '../words/thesaurus.ts';

/** Stops something that was planned; harmless when it has already happened. */
export type Cancel = () => void;

/** Time as the server knows it; tests hand in a clock of their own. */
export interface Timers {
  /** Runs `task` in a coming turn of the event loop, after what already waits there. */
  soon(task: () => void): void;
  /** Runs `task` after so many milliseconds. */
  after(milliseconds: number, task: () => void): Cancel;
}

/** What the place where the server runs gives it. */
export interface Host {
  readonly phonics: Phonics;
  /**
   * Reads a text file of a `file:` address as UTF-8; null when it is not there, or when it lies (links followed)
   * outside `folder`, the address of a folder. Absent where there is no disk.
   */
  readonly readFile?: (uri: string, folder: string) => Promise<string | null>;
  /**
   * The addresses of the markdown and YAML files below the folder of a `file:` address, at most so many; folders whose
   * name begins with a dot, node_modules and links to folders are passed by. Absent where there is no disk.
   */
  readonly listFiles?: (folder: string, most: number) => Promise<readonly string[]>;
  readonly timers: Timers;
  /**
   * Gives the thesaurus, read when it is first asked for and not before. Absent where there is none: then fixes offer no
   * other words. A failure rejects, and the next call tries again.
   */
  readonly thesaurus?: () => Promise<Thesaurus>;
  /** Gives the code that makes PDF and reports, loaded when it is first asked for. Absent where nothing can be printed. */
  readonly printing?: () => Promise<Printing>;
}

/** The code that makes PDF, the fonts it needs, and the code that writes reports. */
export interface Printing {
  readonly print: (order: PrintOrder) => Printed;
  /** Makes what lays out previews; it keeps pictures and faces from one draft to the next. */
  readonly createPreviewer: () => Previewer;
  readonly report: SeriesReport;
  readonly fonts: FontBytes;
}

/** What the bundle of that code has, wherever it is loaded. */
export interface PrintingCode {
  readonly print: Printing['print'];
  readonly report: Printing['report'];
  readonly createPreviewer: (fonts: FontBytes) => Previewer;
}

/** The clock of the machine. A turn is `setImmediate` where there is one, as the message queue has it. */
export const systemTimers: Timers = {
  soon: (task) => {
    if (typeof setImmediate === 'function') setImmediate(task);
    else setTimeout(task, 0);
  },
  after: (milliseconds, task) => {
    const timer = setTimeout(task, milliseconds);
    return () => clearTimeout(timer);
  },
};
