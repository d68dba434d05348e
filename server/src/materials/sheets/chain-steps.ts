import type { ChainWord } from '../order.ts';

/** What leads from one word of a chain to the next. */
export interface ChainStep extends ChainWord {
  /** The place of the grapheme that is new in the word; absent when one was dropped, and for the first word. */
  readonly changed?: number;
  /** The step as a teacher says it; empty for the first word. */
  readonly instruction: string;
}

/** The steps of a chain. */
export function chainSteps(chain: readonly ChainWord[]): readonly ChainStep[] {
  return chain.map(({ word, parts }, index) => {
    const before = chain[index - 1]?.parts;
    if (before === undefined) return { word, parts, instruction: '' };
    const from = parts.findIndex(({ letters }, at) => letters !== before[at]?.letters);
    const place = from === -1 ? parts.length : from;
    const [old = '', fresh = ''] = [before[place]?.letters, parts[place]?.letters];
    if (parts.length < before.length) return { word, parts, instruction: `Take away ${old}.` };
    const instruction = parts.length > before.length ? `Add ${fresh}.` : `Change ${old} to ${fresh}.`;
    return { word, parts, changed: place, instruction };
  });
}

/**
 * The letter cards that a chain needs: each grapheme as often as the word that has it most often, in the order of the alphabet.
 * A split grapheme needs two cards, since other letters come to lie between them.
 */
export function lettersNeeded(chain: readonly ChainWord[]): readonly string[] {
  const needed = new Map<string, number>();
  for (const { parts } of chain) {
    const graphemes = parts.flatMap(({ letters }) => letters.split('_'));
    for (const grapheme of new Set(graphemes)) {
      const count = graphemes.filter((each) => each === grapheme).length;
      needed.set(grapheme, Math.max(count, needed.get(grapheme) ?? 0));
    }
  }
  return [...needed]
    .sort(([one], [other]) => (one < other ? -1 : 1))
    .flatMap(([grapheme, count]) => Array.from({ length: count }, () => grapheme));
}
