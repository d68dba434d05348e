import type { Phonics } from '../../server/src/phonics/phonics.ts';
import { rowsOf } from '../../server/src/phonics/table.ts';
import { generalizations } from './clymer-generalizations.ts';

/** A generalization's figures, ours beside the study's. */
export interface Comparison {
  readonly number: number;
  readonly part: string;
  readonly text: string;
  readonly conforming: number;
  readonly exceptions: number;
  /** Percent of the words it speaks of that follow it. */
  readonly ours: number;
  readonly theirs: number;
}

/** Counts every generalization over a vocabulary, beside the published figures (`data/clymer-1963.tsv`). */
export function comparisonsOf(
  words: readonly string[],
  published: string,
  phonics: Phonics,
): readonly Comparison[] {
  const rows = rowsOf(published, ['n', 'generalization (paraphrase)', 'part', 'percent_utility']);
  return generalizations.map(({ number, part, test }) => {
    const row = rows.find((each) => Number(each.n) === number && each.part === part);
    if (!row) throw new Error(`The table has no generalization ${number}, ${part}.`);
    let conforming = 0;
    let exceptions = 0;
    for (const word of words) {
      const [reading] = phonics.readingsOf(word);
      const verdict = reading && test(word, reading);
      if (verdict === true) conforming += 1;
      if (verdict === false) exceptions += 1;
    }
    return {
      number,
      part,
      text: row['generalization (paraphrase)'],
      conforming,
      exceptions,
      ours: (100 * conforming) / (conforming + exceptions),
      theirs: Number(row.percent_utility),
    };
  });
}
