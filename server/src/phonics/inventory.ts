import { isVowel, type Phoneme } from './phoneme.ts';
import { rowsOf } from './table.ts';

/** Where a correspondence may stand without extra cost. */
export type Condition = 'anywhere' | 'unstressed' | 'stressed' | 'final' | 'initial';

/** One row of the inventory of spellings: letters that may say sounds. */
export interface Correspondence {
  /** A grapheme in lower case; a split one with its low line (`a_e`). */
  readonly letters: string;
  /** Empty for silent letters. */
  readonly sounds: readonly Phoneme[];
  /** The common key word; absent for odd spellings. */
  readonly keyWord?: string;
  /** What an alignment pays for it: about 1 for regular ones, 5 and more for those of a word or two. */
  readonly cost: number;
  readonly when: Condition;
}

/**
 * Reads the inventory (`server/data/spellings.tsv`). Rows with a vowel before R are given once for every way in which
 * the dictionary writes that r-vowel, and rows marked `=AO` for AO as well.
 */
export function readInventory(text: string): readonly Correspondence[] {
  const found = new Map<string, Correspondence>();
  for (const row of rowsOf(text, ['letters', 'sounds', 'key word', 'cost', 'when'])) {
    const sounds = row.sounds === '-' ? [] : (row.sounds.split(' ') as Phoneme[]);
    const also = row.when === '=AO';
    const when = also || row.when === '' ? 'anywhere' : (row.when as Condition);
    const cost = Number(row.cost);
    for (const [index, variant] of variantsOf(sounds, also).entries()) {
      const key = `${row.letters} ${variant.join(' ')} ${when}`;
      // A row of its own in the table wins over a row derived from another.
      if (index > 0 && found.has(key)) continue;
      const keyWord = row['key word'];
      found.set(key, {
        letters: row.letters,
        sounds: variant,
        cost: cost + index * 0.01,
        when,
        ...(keyWord === '' ? {} : { keyWord }),
      });
    }
  }
  return [...found.values()];
}

/** True when the correspondence says a vowel. */
export function saysVowel(sounds: readonly Phoneme[]): boolean {
  return sounds.some(isVowel);
}

const rVowels: readonly (readonly string[])[] = [
  ['IH R', 'IY R'],
  ['EH R', 'AE R', 'EY R'],
  ['UH R', 'UW R', 'AO R'],
  ['Y UH R', 'Y UW R', 'Y ER'],
  ['AY ER', 'AY R'],
  ['AW ER', 'AW R'],
  ['AO R', 'OW R'],
];

function variantsOf(sounds: readonly Phoneme[], alsoWithAO: boolean): readonly (readonly Phoneme[])[] {
  const written = sounds.join(' ');
  const variants = [written];
  for (const group of rVowels) if (group[0] === written) variants.push(...group.slice(1));
  if (alsoWithAO) variants.push(...variants.map((variant) => variant.replace('AA', 'AO')));
  return variants.map((variant) => (variant === '' ? [] : (variant.split(' ') as Phoneme[])));
}
