// The code that makes PDF and lays out previews, as a bundle that hosts load when something is to be printed or seen.
export { fontFiles } from './materials/layout/font-files.ts';
export { createPreviewer } from './materials/preview/previewer.ts';
export { print } from './materials/print.ts';
