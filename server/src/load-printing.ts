import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import type { Printing, PrintingCode } from './editor/host.ts';
import { type FontBytes, fontFiles } from './materials/layout/font-files.ts';

/**
 * Loads the code that makes PDF and reports, with its fonts, on Node. It is a bundle of its own, so that nothing else pays for it. The
 * bundle and the fonts stand beside this code, or in `server/dist` when the sources run. Throws when they are in neither
 * place.
 */
export function loadPrinting(): Printing {
  const beside = new URL('./print.js', import.meta.url);
  const built = new URL('../dist/print.js', import.meta.url);
  const bundle = existsSync(beside) ? beside : built;
  const code: PrintingCode = createRequire(import.meta.url)(fileURLToPath(bundle));
  const font = (name: string): Uint8Array => readFileSync(new URL(name, bundle));
  const fonts: FontBytes = {
    regular: font(fontFiles.regular),
    regularExtended: font(fontFiles.regularExtended),
    bold: font(fontFiles.bold),
    boldExtended: font(fontFiles.boldExtended),
  };
  return { ...code, fonts, createPreviewer: () => code.createPreviewer(fonts) };
}
