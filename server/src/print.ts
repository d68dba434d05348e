// The code that makes PDF, lays out previews and writes reports, as a bundle that hosts load when it is wanted.
export { fontFiles } from './materials/layout/font-files.ts';
export { createPreviewer } from './materials/preview/previewer.ts';
export { print } from './materials/print.ts';
export { seriesReport as report } from './series/report/series-report.ts';
