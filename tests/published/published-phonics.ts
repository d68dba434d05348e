import { loadPhonics } from '../../server/src/load-phonics.ts';

/** The phonics of the whole lexicon, for scripts that run without the test runner. */
export const phonics = loadPhonics();
