import type { Series } from '../series.ts';
import { csvOf } from './csv.ts';
import { coverageHtml } from './html.ts';
import { coverageJson } from './json.ts';
import { type TableName, tableOf } from './tables.ts';

/** Writes a series as a file: one HTML page, JSON, or one of its tables as CSV (`stories` when none is named). */
export type SeriesReport = (series: Series, format: 'html' | 'json' | 'csv', table?: TableName) => string;

/** The formats of a report that is kept. */
export const seriesReport: SeriesReport = (series, format, table = 'stories') => {
  switch (format) {
    case 'html':
      return coverageHtml(series);
    case 'json':
      return jsonSections({ ...coverageJson(series) });
    case 'csv':
      return csvOf(tableOf(series, table));
  }
};

/** The version of the JSON report; it goes up when a key changes its meaning or goes away. */
const formatVersion = 1;

/** Several lists, `{"version":1,"NAME":[…],…}`, every item of a list on a line of its own. */
function jsonSections(sections: Readonly<Record<string, unknown>>): string {
  const entries = Object.entries({ version: formatVersion, ...sections }).map(([key, value]) => {
    const isList = Array.isArray(value) && value.length > 0;
    const written = isList
      ? `[\n${value.map((item) => JSON.stringify(item)).join(',\n')}\n]`
      : JSON.stringify(value);
    return `${JSON.stringify(key)}:${written}`;
  });
  return `{${entries.join(',\n')}}\n`;
}
