import type { ChainWord } from '../order.ts';

/** What leads from one word of a chain to the next. */
export interface ChainStep {
  readonly word: string;
  readonly graphemes: readonly string[];
  /** The place of the grapheme that is new in the word; absent when one was dropped, and for the first word. */
  readonly changed?: number;
  /** The step as a teacher says it; empty for the first word. */
  readonly instruction: string;
}

/** The steps of a chain. */
export function chainSteps(chain: readonly ChainWord[]): readonly ChainStep[] {
  return chain.map(({ word, graphemes }, index) => {
    const before = chain[index - 1]?.graphemes;
    if (before === undefined) return { word, graphemes, instruction: '' };
    const from = graphemes.findIndex((grapheme, at) => grapheme !== before[at]);
    const place = from === -1 ? graphemes.length : from;
    if (graphemes.length < before.length) {
      return { word, graphemes, instruction: `Take away ${before[place] ?? ''}.` };
    }
    const changed = { changed: place };
    if (graphemes.length > before.length) {
      return { word, graphemes, ...changed, instruction: `Add ${graphemes[place] ?? ''}.` };
    }
    return {
      word,
      graphemes,
      ...changed,
      instruction: `Change ${before[place] ?? ''} to ${graphemes[place] ?? ''}.`,
    };
  });
}

/** The letter cards that a chain needs: each grapheme as often as the word that has it most often, in the order of the alphabet. */
export function lettersNeeded(chain: readonly ChainWord[]): readonly string[] {
  const needed = new Map<string, number>();
  for (const { graphemes } of chain) {
    for (const grapheme of new Set(graphemes)) {
      const count = graphemes.filter((each) => each === grapheme).length;
      needed.set(grapheme, Math.max(count, needed.get(grapheme) ?? 0));
    }
  }
  return [...needed]
    .sort(([one], [other]) => (one < other ? -1 : 1))
    .flatMap(([grapheme, count]) => Array.from({ length: count }, () => grapheme));
}
