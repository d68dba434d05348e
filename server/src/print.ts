// The code that makes PDF, as a bundle that hosts load when something is to be printed.
export { fontFiles } from './materials/layout/font-files.ts';
export { print } from './materials/print.ts';
