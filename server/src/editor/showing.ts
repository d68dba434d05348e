import type { DocumentDiagnosticReport } from 'vscode-languageserver';
import { type Connection, type Diagnostic, DocumentDiagnosticReportKind } from 'vscode-languageserver';
import type { Analysis } from './analysis.ts';
import { gaugeParamsOf } from './gauge.ts';
import type { Cancel, Timers } from './host.ts';
import { createPageDiagnostics } from './page-diagnostics.ts';
import { gaugeNotification } from './protocol.ts';
import { shownOf } from './shown.ts';
import type { Typing } from './typing.ts';

/** Brings analyses to the client: diagnostics the one way or the other, and the gauge. */
export interface Showing {
  /** To be called with each analysis that is current: sends what the client does not have yet. */
  show(analysis: Analysis): void;
  /** The answer to a client that pulls. */
  report(analysis: Analysis, previousResultId: string | undefined): DocumentDiagnosticReport;
  /** To be called when no document waits for its marks any more: the gauges that waited for that go out. */
  rested(): void;
  /** True when something found in a document is held back while its word is being typed. */
  holdsBack(uri: string): boolean;
  /** Takes what was shown of a document away. */
  clear(uri: string): void;
  /** Asks a client that pulls to pull again; several calls in one turn are one question. */
  askAgain(): void;
  /** How many documents something is remembered of. */
  readonly size: number;
}

interface Surroundings {
  readonly connection: Connection;
  readonly pulls: boolean;
  readonly typing: Typing;
  readonly timers: Timers;
  readonly isCurrent: (analysis: Analysis) => boolean;
  /** True while documents wait for their marks. */
  readonly isBusy: () => boolean;
  /** What to do with a failed question to the client. */
  readonly failed: (doing: string, fault: unknown) => void;
}

/** Texts longer than this, in UTF-16 code units, have their gauge less often: its hundreds of sentences take long to send. */
const longText = 20_000;
/** Milliseconds between two gauges of a text. The first comes at once; nobody reads figures that change with every key. */
const gaugePauses = { short: 100, long: 1000 } as const;

/** Makes the way to the client. */
export function createShowing(surroundings: Surroundings): Showing {
  const { connection, pulls, typing, timers, isCurrent, isBusy, failed } = surroundings;
  const known = new Map<
    string,
    { diagnostics?: string; holdsBack: boolean; gauge?: number; latest: Analysis }
  >();
  const pauses = new Map<string, Cancel>();
  const pages = createPageDiagnostics();
  /** Gauges that let the marks of other documents go first. */
  const waiting = new Set<() => void>();
  let isAsking = false;

  const entryOf = (analysis: Analysis) => {
    const entry = known.get(analysis.snapshot.uri) ?? { holdsBack: false, latest: analysis };
    entry.latest = analysis;
    known.set(analysis.snapshot.uri, entry);
    return entry;
  };

  const sendGauge = (uri: string): void => {
    const entry = known.get(uri);
    if (entry === undefined || entry.gauge === entry.latest.id || !isCurrent(entry.latest)) return;
    const params = gaugeParamsOf(entry.latest);
    entry.gauge = entry.latest.id;
    if (params !== undefined) void connection.sendNotification(gaugeNotification, params);
  };

  /** The diagnostics are on their way before the gauge is made; then there is a pause, and the last one is not missed. */
  const gaugeInTime = (uri: string): void => {
    if (pauses.has(uri)) return;
    let cancel: Cancel | undefined;
    pauses.set(uri, () => cancel?.());
    const send = (): void => {
      if (!pauses.has(uri)) return;
      if (isBusy()) {
        waiting.add(send);
        return;
      }
      sendGauge(uri);
      const length = known.get(uri)?.latest.snapshot.document.getText().length ?? 0;
      cancel = timers.after(length > longText ? gaugePauses.long : gaugePauses.short, () => {
        pauses.delete(uri);
        const entry = known.get(uri);
        if (entry !== undefined && entry.gauge !== entry.latest.id) gaugeInTime(uri);
      });
    };
    timers.soon(send);
  };

  return {
    show: (analysis) => {
      const { uri, document } = analysis.snapshot;
      const entry = entryOf(analysis);
      if (!pulls) {
        const shown = shownOf(analysis, typing.at(uri), pages);
        if (entry.diagnostics !== shown.resultId) {
          entry.diagnostics = shown.resultId;
          entry.holdsBack = shown.holdsBack;
          sendDiagnostics(connection, uri, shown.diagnostics(), document.version);
        }
      }
      gaugeInTime(uri);
    },
    report: (analysis, previousResultId) => {
      const shown = shownOf(analysis, typing.at(analysis.snapshot.uri), pages);
      entryOf(analysis).holdsBack = shown.holdsBack;
      const { resultId } = shown;
      return resultId === previousResultId
        ? { kind: DocumentDiagnosticReportKind.Unchanged, resultId }
        : { kind: DocumentDiagnosticReportKind.Full, resultId, items: shown.diagnostics() };
    },
    rested: () => {
      const all = [...waiting];
      waiting.clear();
      for (const send of all) send();
    },
    holdsBack: (uri) => known.get(uri)?.holdsBack ?? false,
    clear: (uri) => {
      pauses.get(uri)?.();
      pauses.delete(uri);
      if (known.get(uri)?.diagnostics !== undefined) sendDiagnostics(connection, uri, []);
      known.delete(uri);
    },
    askAgain: () => {
      if (!pulls || isAsking) return;
      isAsking = true;
      timers.soon(() => {
        isAsking = false;
        connection.languages.diagnostics
          .refresh()
          .catch((fault: unknown) => failed('asking for a pull of diagnostics', fault));
      });
    },
    get size() {
      return known.size + pauses.size + waiting.size;
    },
  };
}

function sendDiagnostics(
  connection: Connection,
  uri: string,
  diagnostics: Diagnostic[],
  version?: number,
): void {
  void connection.sendDiagnostics({ uri, ...(version === undefined ? {} : { version }), diagnostics });
}
