import type { Sound } from './align.ts';
import { isVowel, type Phoneme } from './phoneme.ts';
import type { Ending } from './reading.ts';

/** How a base changes before an ending. */
export type Change = 'none' | 'doubled' | 'dropped e' | 'y to i' | 'ie to y' | 'f to v' | 'dropped le';

/** A way in which a word may be a base and an ending, by its letters alone. */
export interface Split {
  readonly ending: Ending;
  readonly base: string;
  readonly change: Change;
  /** Where the ending's letters begin in the word. */
  readonly at: number;
}

/**
 * All ways to read a word (lower case, straight apostrophe) as base and ending by its letters, the plainest first.
 * Whether the base is a word, and whether it sounds so, is for the caller to find out.
 */
export function splitsOf(word: string): readonly Split[] {
  const splits: Split[] = [];
  const add = (ending: Ending, base: string, change: Change, at: number): void => {
    if ((/[aeiouy]/.test(base) && base.length > 1) || (ending.includes("'") && base.length > 0))
      splits.push({ ending, base, change, at });
  };
  for (const ending of contractions) {
    if (word.endsWith(ending))
      add(ending, word.slice(0, -ending.length), 'none', word.length - ending.length);
  }
  // can and n't share their n.
  if (word.endsWith("n't")) add("n't", word.slice(0, -2), 'none', word.length - 2);
  if (splits.length > 0 || word.includes("'")) return splits;
  addPlurals(word, add);
  for (const ending of ['ed', 'ing', 'er', 'est', 'y'] as const) addVowelEnding(word, ending, add);
  if (word.endsWith('ly')) {
    const stem = word.slice(0, -2);
    add('ly', stem, 'none', word.length - 2);
    if (stem.endsWith('i')) add('ly', `${stem.slice(0, -1)}y`, 'y to i', word.length - 2);
    if (/[^aeiou]$/.test(stem)) add('ly', `${word.slice(0, -1)}e`, 'dropped le', word.length - 2);
  }
  return splits;
}

/** The letters of an inflected form: the rules of English spelling turned round, for a base that takes `ending`. */
export function inflect(base: string, ending: Ending): string {
  if (ending.includes("'")) return base + ending;
  const vowelEnding = ending !== 's' && ending !== 'ly';
  if (ending === 's' || ending === 'es') {
    if (/[^aeiou]y$/.test(base)) return `${base.slice(0, -1)}ies`;
    return /(s|x|z|ch|sh)$/.test(base) ? `${base}es` : `${base}s`;
  }
  if (/[^aeiou]y$/.test(base) && ending !== 'ing') return `${base.slice(0, -1)}i${ending}`;
  if (ending === 'ing' && /ie$/.test(base)) return `${base.slice(0, -2)}ying`;
  if (vowelEnding && /e$/.test(base)) {
    if (ending === 'ing' && /(ee|oe|ye)$/.test(base)) return base + ending;
    return base.slice(0, -1) + ending;
  }
  if (vowelEnding && /^[^aeiou]*(qu)?[aeiouy][bdfgklmnprstvz]$/.test(base))
    return base + base.slice(-1) + ending;
  return base + ending;
}

/** A base's sounds and an ending's, one after the other. */
export interface Joined {
  /** How many of the word's sounds are the base's. */
  readonly baseSounds: number;
}

/**
 * Whether a pronunciation is that of the base with the ending: the base's sounds (accent noise merged), then those the
 * ending has after them (*cats* S, *dogs* Z, *boxes* AH Z; *jumped* T, *played* D, *rested* AH D).
 */
export function joins(base: readonly Sound[], split: Split, word: readonly Sound[]): Joined | undefined {
  for (const variant of baseVariants(base, split)) {
    if (word.length <= variant.length) continue;
    if (!sameSounds(variant, word.slice(0, variant.length))) continue;
    const rest = word
      .slice(variant.length)
      .map((sound) => sound.phoneme)
      .join(' ');
    const last = variant[variant.length - 1]?.phoneme;
    if (last && endingSounds(split.ending, last).includes(rest)) return { baseSounds: variant.length };
  }
  return undefined;
}

/**
 * Whether the sounds of a base are those of a longer word too: accent noise merged, any vowel reduced where it is weak
 * there (`stress` 0), and the r of *admire* written as R or as ER.
 */
export function sameSounds(base: readonly Sound[], word: readonly Sound[]): boolean {
  return (
    base.length === word.length &&
    base.every(({ phoneme }, index) => {
      const there = word[index];
      return there !== undefined && sameSound(phoneme, there, base[index - 1]?.phoneme);
    })
  );
}

/** The sounds an ending has after a base that ends in `last`, likeliest first, phonemes parted by a space. */
export function endingSounds(ending: Ending, last: Phoneme): readonly string[] {
  switch (ending) {
    case 's':
    case 'es':
    case "'s":
      if (sibilants.has(last)) return ['AH Z', 'IH Z'];
      return voiceless.has(last) ? ['S'] : ['Z'];
    case 'ed':
      if (last === 'T' || last === 'D') return ['AH D', 'IH D'];
      return voiceless.has(last) ? ['T'] : ['D'];
    default:
      return plainEndings[ending] ?? [];
  }
}

const contractions = ["n't", "'s", "'ll", "'re", "'ve", "'d", "'m"] as const;
const sibilants: ReadonlySet<Phoneme> = new Set<Phoneme>(['S', 'Z', 'SH', 'ZH', 'CH', 'JH']);
const voiceless: ReadonlySet<Phoneme> = new Set<Phoneme>(['P', 'T', 'K', 'F', 'TH', 'S', 'SH', 'CH']);
const plainEndings: Readonly<Partial<Record<Ending, readonly string[]>>> = {
  ing: ['IH NG'],
  er: ['ER'],
  est: ['AH S T', 'IH S T'],
  y: ['IY'],
  ly: ['L IY'],
  "n't": ['AH N T', 'N T', 'T'],
  "'ll": ['L', 'AH L'],
  "'re": ['R', 'ER', 'AH R'],
  "'ve": ['V', 'AH V'],
  "'d": ['D', 'AH D', 'IH D'],
  "'m": ['M'],
};

type Add = (ending: Ending, base: string, change: Change, at: number) => void;

function addPlurals(word: string, add: Add): void {
  const { length } = word;
  if (!word.endsWith('s') || word.endsWith('ss')) return;
  if (word.endsWith('ies')) add('es', `${word.slice(0, -3)}y`, 'y to i', length - 2);
  // doses is dose with s before it is dos with es.
  add('s', word.slice(0, -1), 'none', length - 1);
  if (/(s|x|z|ch|sh|o|ss|zz)es$/.test(word)) add('es', word.slice(0, -2), 'none', length - 2);
  if (word.endsWith('zzes') || word.endsWith('sses')) add('es', word.slice(0, -3), 'doubled', length - 2);
  if (word.endsWith('ves')) {
    add('s', `${word.slice(0, -3)}fe`, 'f to v', length - 1);
    add('es', `${word.slice(0, -3)}f`, 'f to v', length - 2);
  }
}

function addVowelEnding(word: string, ending: 'ed' | 'ing' | 'er' | 'est' | 'y', add: Add): void {
  if (!word.endsWith(ending)) return;
  const at = word.length - ending.length;
  const stem = word.slice(0, at);
  add(ending, stem, 'none', at);
  // dying is die before it is dye.
  if (stem.endsWith('y') && ending === 'ing') add(ending, `${stem.slice(0, -1)}ie`, 'ie to y', at);
  if (ending !== 'ing' || !/[eo]$/.test(stem)) add(ending, `${stem}e`, 'dropped e', at);
  if (/([bdfgklmnprstvz])\1$/.test(stem)) add(ending, stem.slice(0, -1), 'doubled', at);
  if (/ck$/.test(stem)) add(ending, stem.slice(0, -1), 'doubled', at);
  if (stem.endsWith('i') && ending !== 'ing' && ending !== 'y')
    add(ending, `${stem.slice(0, -1)}y`, 'y to i', at);
}

function baseVariants(base: readonly Sound[], split: Split): readonly (readonly Sound[])[] {
  const last = base[base.length - 1];
  const variants: (readonly Sound[])[] = [base];
  if (!last) return variants;
  if (split.change === 'f to v' && last.phoneme === 'F') return [[...base.slice(0, -1), { phoneme: 'V' }]];
  if (split.change === 'dropped le')
    return last.phoneme === 'L' ? [base.slice(0, base.at(-2)?.phoneme === 'AH' ? -2 : -1)] : [];
  // juggle, juggling; simple, simpler: the vowel of -le may go.
  if (split.change === 'dropped e' && last.phoneme === 'L' && base.at(-2)?.phoneme === 'AH')
    variants.push([...base.slice(0, -2), last]);
  // long, longer: a hard g comes in.
  if ((split.ending === 'er' || split.ending === 'est') && last.phoneme === 'NG')
    variants.push([...base, { phoneme: 'G' }]);
  return variants;
}

function sameSound(base: Phoneme, { phoneme, stress }: Sound, before: Phoneme | undefined): boolean {
  if (base === phoneme || merged.has(`${base} ${phoneme}`)) return true;
  if (base === 'R' || base === 'ER') return (before === 'AY' || before === 'AW') && /^E?R$/.test(phoneme);
  return stress === 0 && (phoneme === 'AH' || phoneme === 'IH') && isVowel(base);
}

const merged: ReadonlySet<string> = new Set([
  'AA AO',
  'AO AA',
  'IH IY',
  'IY IH',
  'UH UW',
  'UW UH',
  'AE EH',
  'EH AE',
]);
