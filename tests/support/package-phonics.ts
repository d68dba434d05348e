import { loadPhonics } from '../../server/src/load-phonics.ts';
import type { Phonics } from '../../server/src/phonics/phonics.ts';

/** The phonics of the package, lexicon and all. */
export const packagePhonics: Phonics = loadPhonics();
