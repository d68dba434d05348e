import { rowsOf } from '../phonics/table.ts';
import type { PartOfSpeech } from './thesaurus-format.ts';

/** What stands behind a verb in its sentence. */
export type Follower = 'object' | 'place' | 'nothing';

/** A swap from the table `replacements`. */
export interface HandReplacement {
  /** The words to put, the first in its base form: one, or a phrase such as *go up*. */
  readonly words: readonly string[];
  /** Above 0, at most 1; looser swaps are less than a half. */
  readonly closeness: number;
  /** What has to follow the verb; absent where it makes no difference. */
  readonly when?: Follower;
}

/** The swaps that were made by hand, by base form and part of speech. */
export interface HandReplacements {
  /** The swaps of a word, the best first; `other` for the small words that have no forms. */
  of(base: string, part: PartOfSpeech | 'other'): readonly HandReplacement[];
  /** True for a word that is not to stand for another, whatever WordNet says. */
  isBarred(base: string, part: PartOfSpeech, word: string): boolean;
}

/** Reads the table; see its first lines. */
export function readHandReplacements(table: string): HandReplacements {
  const found = new Map<string, HandReplacement[]>();
  const barred = new Set<string>();
  for (const row of rowsOf(table, ['word', 'part', 'replacements', 'when'])) {
    const key = `${row.word} ${row.part}`;
    const when = followers.find((each) => each === row.when);
    const list = found.get(key) ?? [];
    const offered = row.replacements.replace(/(?:^|\s)-(\S+)/g, (_, word: string) => {
      barred.add(`${key} ${word}`);
      return '';
    });
    const [best = '', looser = ''] = offered.split(';');
    for (const [group, from, step] of [
      [best, 1, 0.04],
      [looser, 0.45, 0.03],
    ] as const) {
      for (const [index, phrase] of group
        .split(' ')
        .filter((each) => each !== '')
        .entries()) {
        const words = phrase.split('_');
        const closeness = Math.max(0.05, from - index * step);
        list.push(when === undefined ? { words, closeness } : { words, closeness, when });
      }
    }
    found.set(key, list);
  }
  return {
    of: (base, part) => found.get(`${base} ${part}`) ?? [],
    isBarred: (base, part, word) => barred.has(`${base} ${part} ${word}`),
  };
}

const followers: readonly Follower[] = ['object', 'place', 'nothing'];
