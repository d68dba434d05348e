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

/** Reads the table; see its first lines. A word's rows are taken apart when it is asked for: a story asks for few. */
export function readHandReplacements(table: string): HandReplacements {
  const rows = new Map<string, Row[]>();
  for (const row of rowsOf(table, ['word', 'part', 'replacements', 'when'])) {
    const key = `${row.word} ${row.part}`;
    const own = rows.get(key);
    if (own === undefined) rows.set(key, [row]);
    else own.push(row);
  }
  const known = new Map<string, Swaps>();
  const swapsOf = (key: string): Swaps => {
    const swaps = known.get(key) ?? readSwaps(rows.get(key) ?? []);
    known.set(key, swaps);
    return swaps;
  };
  return {
    of: (base, part) => swapsOf(`${base} ${part}`).offered,
    isBarred: (base, part, word) => swapsOf(`${base} ${part}`).barred.has(word),
  };
}

interface Row {
  readonly replacements: string;
  readonly when: string;
}

interface Swaps {
  readonly offered: readonly HandReplacement[];
  readonly barred: ReadonlySet<string>;
}

function readSwaps(rows: readonly Row[]): Swaps {
  const barred = new Set<string>();
  const offered = rows.flatMap(({ replacements, when }) => {
    const follower = followers.find((each) => each === when);
    const phrases = replacements.replace(/(?:^|\s)-(\S+)/g, (_, word: string) => {
      barred.add(word);
      return '';
    });
    const [best = '', looser = ''] = phrases.split(';');
    return [...readGroup(best, 1, 0.04), ...readGroup(looser, 0.45, 0.03)].map((swap) =>
      follower === undefined ? swap : { ...swap, when: follower },
    );
  });
  return { offered, barred };
}

/** Each phrase a step less close than the one before. */
function readGroup(group: string, from: number, step: number): readonly HandReplacement[] {
  const phrases = group.split(' ').filter((each) => each !== '');
  return phrases.map((phrase, index) => ({
    words: phrase.split('_'),
    closeness: Math.max(0.05, from - index * step),
  }));
}

const followers: readonly Follower[] = ['object', 'place', 'nothing'];
