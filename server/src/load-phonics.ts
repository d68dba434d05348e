import { existsSync, readFileSync } from 'node:fs';
import { openPhonics } from './phonics/open-phonics.ts';
import type { Phonics } from './phonics/phonics.ts';

/**
 * Opens the phonics on Node. The data file stands beside the bundle, or in `server/generated` when the sources run.
 * Throws when it is in neither place or is not of this version.
 */
export function loadPhonics(): Phonics {
  const beside = new URL('./words.bin', import.meta.url);
  const generated = new URL('../generated/words.bin', import.meta.url);
  return openPhonics(readFileSync(existsSync(beside) ? beside : generated));
}
