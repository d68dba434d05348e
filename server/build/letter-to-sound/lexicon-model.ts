import type { AlignedPart } from '../../src/phonics/align.ts';
import { closingE, tokenName } from '../../src/phonics/letter-to-sound.ts';
import type { Entry } from '../../src/phonics/lexicon.ts';
import { placed } from '../../src/phonics/spans.ts';
import { type CompactOptions, encodeCompactModel } from './compact-model.ts';
import { NgramModel } from './n-gram.ts';

/** A correspondence of fewer readings than this is a matter of single words, and is not learned. */
const leastUses = 8;

/**
 * The run-time model, as bytes, of the aligned words: every reading of every word of the letters a to z, cut as the
 * lexicon cuts it, those with a very rare correspondence left out.
 */
export function modelOfEntries(
  entries: readonly Entry[],
  options: CompactOptions = { order: 5, leastGain: 3.3 },
): Uint8Array {
  const words = entries.filter(({ word }) => /^[a-z]+$/.test(word));
  const readings = words.flatMap(({ word, readings }) => readings.map(({ parts }) => namesOf(word, parts)));
  const uses = new Map<string, number>();
  for (const names of readings) for (const name of names) uses.set(name, (uses.get(name) ?? 0) + 1);
  const names = [...uses]
    .filter(([, count]) => count >= leastUses)
    .sort(byUse)
    .map(([name]) => name);
  const numbers = new Map(names.map((name, number) => [name, number]));
  const sequences = readings.flatMap((reading) => {
    const sequence = reading.map((name) => numbers.get(name) ?? -1);
    return sequence.includes(-1) ? [] : [Int32Array.from(sequence)];
  });
  return encodeCompactModel(new NgramModel(sequences, names.length, options.order), names, options);
}

function byUse([leftName, left]: [string, number], [rightName, right]: [string, number]): number {
  return right - left || (leftName < rightName ? -1 : 1);
}

/** The reading as token names in the order of the letters, a split grapheme's e at its own place. */
function namesOf(word: string, parts: readonly AlignedPart[]): readonly string[] {
  return placed(word, parts)
    .flatMap((part) =>
      part.spans.map(([start], index) => ({ start, name: index === 0 ? tokenName(part) : closingE })),
    )
    .sort((a, b) => a.start - b.start)
    .map(({ name }) => name);
}
