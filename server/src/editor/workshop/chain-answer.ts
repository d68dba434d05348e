import { buildChain } from '../../chains/build-chain.ts';
import type { ChainLink } from '../../chains/chain.ts';
import type { Phonics } from '../../phonics/phonics.ts';
import type { Taught } from '../../sequence/taught.ts';
import { foldedWord } from '../../text/folded-word.ts';
import type { WordFinder } from '../../words/find-words.ts';
import type { ChainAnswer, ChainParams, NoAnswer } from './protocol.ts';

/** The chain of a lesson that is like the wish, or why its start cannot be one. */
export function chainAnswer(
  { length, start, seed }: ChainParams,
  taught: Taught,
  finder: WordFinder,
  phonics: Phonics,
): ChainAnswer | NoAnswer {
  const first = start === undefined ? undefined : foldedWord(start.trim());
  const wish = { length: Math.min(40, Math.max(2, Math.round(length))), seed: Math.trunc(seed) };
  const chain = buildChain(finder, taught, phonics, { ...wish, ...(first && { start: first }) });
  if (first && chain.links.length === 0) {
    return { message: `“${first}” cannot begin a chain: it is no common word that is sounded out here.` };
  }
  return {
    lesson: taught.lesson.name,
    length: wish.length,
    isComplete: chain.isComplete,
    isLongest: chain.isLongest,
    links: chain.links.map(linkAnswer),
  };
}

function linkAnswer({ found: { word, reading }, step }: ChainLink): ChainAnswer['links'][number] {
  if (step === undefined) return { word, changed: [] };
  const { kind, from, to } = step;
  const part = kind === 'drop' ? undefined : reading?.parts[step.at];
  const changed = (part?.spans ?? []).map(([start, end]) => ({ start, end }));
  return { word, changed, step: { kind, ...(from && { from }), ...(to && { to }) } };
}
