import { buildChain } from '../chains/build-chain.ts';
import type { Phonics } from '../phonics/phonics.ts';
import type { Taught } from '../sequence/taught.ts';
import type { WordFinder } from '../words/find-words.ts';
import type { ChainWord } from './order.ts';

/** The word-building chain that is printed with the stories of a lesson, the same for each; empty when there is none. */
export function lessonChain(finder: WordFinder, taught: Taught, phonics: Phonics): readonly ChainWord[] {
  const { links } = buildChain(finder, taught, phonics, { length: 8, seed: 1, includesForms: false });
  return links.map(({ found: { word, reading } }) => ({ word, parts: reading?.parts ?? [] }));
}
