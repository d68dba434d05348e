import type { Phonics } from '../phonics/phonics.ts';
import type { Taught } from '../sequence/taught.ts';
import type { WordFinder } from '../words/find-words.ts';
import type { FoundWord } from '../words/found-word.ts';
import { type Budget, bestPath, type Path } from './best-path.ts';
import type { Chain, ChainLink, ChainWish } from './chain.ts';
import { longestPath, reach } from './longest-path.ts';
import { type GraphNode, linkWords } from './word-graph.ts';

/**
 * Builds a word-building chain of words that can be sounded out at a lesson; none is repeated, rare or unfit. Words that
 * children know are tried alone first, then all. The search ends after a fixed number of steps, about a second's work,
 * so that the same wish gives the same chain on every machine. No links when the start is no such word.
 */
export function buildChain(finder: WordFinder, taught: Taught, phonics: Phonics, wish: ChainWish): Chain {
  const start = wish.start === undefined ? undefined : finder.wordAt(taught, wish.start);
  if (wish.start !== undefined && !isUsable(start)) return { links: [], isComplete: false, isLongest: true };
  const all = finder
    .find(taught, { baseFormsOnly: wish.includesForms !== true, limit: mostWords })
    .words.filter(isUsable);
  const familiar = all.filter(
    ({ listed, newSpellings }, place) => listed.isFamiliar && (place < fewWords || newSpellings.length > 0),
  );
  let best: Chain | undefined;
  for (const words of [familiar, all]) {
    const chain = chainOf(withStart(words, start), start, phonics, wish);
    if (chain.isComplete) return chain;
    if (best === undefined || chain.links.length >= best.links.length) best = chain;
  }
  return best ?? { links: [], isComplete: false, isLongest: true };
}

/** How many words are looked at, beside those that practise what is new: first of those children know, then of all. */
const fewWords = 800;
const mostWords = 2500;

/** Steps of the search for a good way, and of the trial of all ways: together about a second's work. */
const mostSteps = 400_000;
const mostTrials = 4_000_000;

/** Long words have no neighbours, and *a* and *I* are not built of graphemes; a chain is for sounding out. */
function isUsable(found: FoundWord | undefined): found is FoundWord {
  const parts = found?.reading?.parts.length ?? 0;
  return found?.kind === 'decodable' && found.word.length > 1 && parts <= 7;
}

function withStart(words: readonly FoundWord[], start: FoundWord | undefined): readonly FoundWord[] {
  return start === undefined || words.some(({ word }) => word === start.word) ? words : [...words, start];
}

function chainOf(
  words: readonly FoundWord[],
  start: FoundWord | undefined,
  phonics: Phonics,
  { length, seed, isCancelled }: ChainWish,
): Chain {
  const nodes = linkWords(words, phonics);
  const places = nodes.map((_, place) => place);
  const starts = start === undefined ? places : places.filter((place) => words[place]?.word === start.word);
  const most = reach(nodes, starts);
  let best: Path | undefined;
  for (const width of [60, 400]) {
    const path = bestPath(nodes, { length, starts, seed, width }, budgetOf(mostSteps, isCancelled));
    if ((path?.length ?? 0) > (best?.length ?? 0)) best = path;
    if ((best?.length ?? 0) >= Math.min(length, most)) break;
  }
  let isLongest = (best?.length ?? 0) >= most;
  if (!isLongest && (best?.length ?? 0) < length) {
    const { path, isCertain } = longestPath(nodes, { starts, length }, budgetOf(mostTrials, isCancelled));
    if ((path?.length ?? 0) > (best?.length ?? 0)) best = path;
    isLongest = isCertain;
  }
  const links = linksOf(best, nodes);
  return { links, isComplete: links.length >= length, isLongest };
}

function budgetOf(steps: number, isCancelled: (() => boolean) | undefined): Budget {
  let left = steps;
  return {
    spend: () => {
      left--;
      if (left % 4096 === 0 && isCancelled?.() === true) left = 0;
      return left > 0;
    },
  };
}

function linksOf(path: Path | undefined, nodes: readonly GraphNode[]): readonly ChainLink[] {
  const links: ChainLink[] = [];
  for (let each = path; each !== undefined; each = each.before) {
    const found = nodes[each.node]?.found;
    if (found !== undefined) links.unshift(each.step === undefined ? { found } : { found, step: each.step });
  }
  return links;
}
