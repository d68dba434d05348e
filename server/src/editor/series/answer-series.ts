import type { Connection } from 'vscode-languageserver';
import type { Host } from '../host.ts';
import type { Runner } from '../runner.ts';
import type { Session } from '../session.ts';
import * as shapes from '../shapes.ts';
import {
  type SeriesAnswer,
  type SeriesParams,
  type SeriesPlaceParams,
  type SeriesPlaceResult,
  type SeriesReportParams,
  type SeriesReportResult,
  seriesPlaceRequest,
  seriesReportRequest,
  seriesRequest,
} from './protocol.ts';

/** Answers what the view of a series asks for. */
export function answerSeries(
  connection: Connection,
  { printing }: Pick<Host, 'printing'>,
  runner: Runner,
  current: () => Session | undefined,
): void {
  connection.onRequest<SeriesAnswer | null, never>(
    seriesRequest,
    runner.request<SeriesParams, SeriesAnswer | null>(
      'a series',
      shapes.record({ uri: shapes.optional(shapes.text) }),
      null,
      async (params) => {
        const series = await current()?.stories?.series();
        return series?.answer(params) ?? null;
      },
    ),
  );
  connection.onRequest<SeriesPlaceResult, never>(
    seriesPlaceRequest,
    runner.request<SeriesPlaceParams, SeriesPlaceResult>(
      'a place of a series',
      shapes.record({ uri: shapes.text, place: shapes.record({ kind: shapes.text }) }),
      null,
      async (params) => {
        const series = await current()?.stories?.series();
        return series?.place(params) ?? null;
      },
    ),
  );
  connection.onRequest<SeriesReportResult, never>(
    seriesReportRequest,
    runner.request<SeriesReportParams, SeriesReportResult>(
      'a report of a series',
      shapes.record({
        uri: shapes.optional(shapes.text),
        format: shapes.text,
        table: shapes.optional(shapes.text),
      }),
      null,
      async (params) => {
        const series = await (await current()?.stories?.series())?.series(params);
        if (!series || printing === undefined) return null;
        const { report } = await printing();
        return report(series, params.format, params.table);
      },
    ),
  );
}
