import type { Phonics } from '../../server/src/phonics/phonics.ts';
import { rowsOf } from '../../server/src/phonics/table.ts';
import { type Generalization, generalizations } from './clymer-generalizations.ts';

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
  /** Percent by the sounds the dictionary of 1963 gives, where the difference is one of dictionaries. */
  readonly asThen?: number;
}

/** Counts every generalization over a vocabulary, beside the published figures (`data/clymer-1963.tsv`). */
export function comparisonsOf(
  words: readonly string[],
  published: string,
  phonics: Phonics,
): readonly Comparison[] {
  const rows = rowsOf(published, ['n', 'generalization (paraphrase)', 'part', 'percent_utility']);
  return generalizations.map(({ number, part, test, asThen }) => {
    const row = rows.find((each) => Number(each.n) === number && each.part === part);
    if (!row) throw new Error(`The table has no generalization ${number}, ${part}.`);
    const { conforming, exceptions } = countOf(words, test, phonics);
    const then = asThen && countOf(words, asThen, phonics);
    return {
      number,
      part,
      text: row['generalization (paraphrase)'],
      conforming,
      exceptions,
      ours: (100 * conforming) / (conforming + exceptions),
      theirs: Number(row.percent_utility),
      ...(then ? { asThen: (100 * then.conforming) / (then.conforming + then.exceptions) } : {}),
    };
  });
}

function countOf(
  words: readonly string[],
  test: Generalization['test'],
  phonics: Phonics,
): { readonly conforming: number; readonly exceptions: number } {
  let conforming = 0;
  let exceptions = 0;
  for (const word of words) {
    const [reading] = phonics.readingsOf(word);
    const verdict = reading && test(word, reading);
    if (verdict === true) conforming += 1;
    if (verdict === false) exceptions += 1;
  }
  return { conforming, exceptions };
}
