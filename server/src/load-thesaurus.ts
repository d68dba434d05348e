import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { openThesaurus, type Thesaurus } from './words/thesaurus.ts';

/**
 * Opens the thesaurus on Node. The data file stands beside the bundle, or in `server/generated` when the sources run.
 * Rejects when it is in neither place or is not of this version.
 */
export async function loadThesaurus(): Promise<Thesaurus> {
  const beside = new URL('./meanings.bin', import.meta.url);
  const generated = new URL('../generated/meanings.bin', import.meta.url);
  return openThesaurus(await readFile(existsSync(beside) ? beside : generated));
}
