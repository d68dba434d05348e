import type { AlignedPart } from './align.ts';
import { type Context, type JointNgrams, openJointNgrams } from './joint-ngrams.ts';
import { isVowel, type Phoneme, phonemes, type Stress } from './phoneme.ts';
import { readRegular } from './regular.ts';

/** Reads words that stand in no list. */
export interface LetterToSound {
  /**
   * The likeliest reading of a word, grapheme by grapheme, in the order of the parts' first letters. A one-syllable word
   * of regular shape is read by the rules of `regular.ts`, any other by the model. Capitals count as small letters; a
   * character that is not a letter a to z is a silent part of its own. Every word with a vowel has one stressed vowel at least.
   */
  pronounce(word: string): readonly AlignedPart[];
}

/**
 * Opens the model of the section `letter-to-sound` of `server/generated/words.bin`. It is a joint n-gram model of the graphemes of the
 * aligned lexicon: the tokens are correspondences with their stress, a split grapheme's e is a token of its own.
 * @throws Error when the bytes are no model of this version.
 */
export function createLetterToSound(bytes: Uint8Array): LetterToSound {
  const search = new Search(openJointNgrams(bytes));
  return {
    pronounce(word) {
      const letters = word.toLowerCase();
      return readRegular(letters) ?? stressed(search.best(letters));
    },
  };
}

/** How a correspondence is written in a model: letters, sounds, stress; `_e` is the e that closes a split grapheme. */
export function tokenName({ letters, sounds, stress }: AlignedPart): string {
  return `${letters}\t${sounds.join(' ')}\t${stress ?? ''}`;
}

/** The name of the token of a split grapheme's e. */
export const closingE = '_e\t\t';

/** How many unfinished readings are kept at each letter, and how far below the best one they may be (natural logarithm). */
const beam = 10;
const margin = 7;

interface Token {
  readonly number: number;
  readonly part: AlignedPart;
  readonly opens: boolean;
  readonly closes: boolean;
  readonly saysVowel: boolean;
}

interface Path {
  readonly context: Context;
  readonly score: number;
  readonly token: Token | undefined;
  readonly before: Path | undefined;
  /** 0 outside a split grapheme; 1 after its vowel, 2 after one consonant, 3 after s and t. */
  readonly open: number;
}

class Search {
  readonly #model: JointNgrams;
  readonly #byLetters = new Map<string, Token[]>();
  readonly #longest: number;

  constructor(model: JointNgrams) {
    this.#model = model;
    let longest = 1;
    model.names.forEach((name, number) => {
      const token = tokenOf(name, number);
      const letters = token.closes ? 'e' : token.part.letters.replace('_e', '');
      longest = Math.max(longest, letters.length);
      const list = this.#byLetters.get(letters) ?? [];
      this.#byLetters.set(letters, list);
      list.push(token);
    });
    this.#longest = longest;
  }

  best(letters: string): readonly AlignedPart[] {
    const columns: Path[][] = Array.from({ length: letters.length + 1 }, () => []);
    columns[0]?.push({ context: this.#model.start, score: 0, token: undefined, before: undefined, open: 0 });
    for (let at = 0; at < letters.length; at++) {
      for (const path of kept(columns[at] ?? [])) this.#extend(path, letters, at, columns);
    }
    let best: Path | undefined;
    let bestScore = Number.NEGATIVE_INFINITY;
    for (const path of columns[letters.length] ?? []) {
      const score = path.score + this.#model.logProbabilityOfEnd(path.context);
      if (path.open === 0 && score > bestScore) [best, bestScore] = [path, score];
    }
    return partsOf(best);
  }

  #extend(path: Path, letters: string, at: number, columns: readonly Path[][]): void {
    for (let length = 1; length <= this.#longest && at + length <= letters.length; length++) {
      const run = letters.slice(at, at + length);
      const choices = this.#byLetters.get(run) ?? (length === 1 ? [silent(run)] : []);
      const column = columns[at + length] ?? [];
      for (const token of choices) {
        const open = openAfter(path, token, run);
        if (open === undefined) continue;
        const score =
          path.score + (token.number < 0 ? -16 : this.#model.logProbability(path.context, token.number));
        if (score < (column[0]?.score ?? Number.NEGATIVE_INFINITY) - margin) continue;
        column.push({
          context: token.number < 0 ? path.context : this.#model.after(path.context, token.number),
          score,
          token,
          before: path,
          open,
        });
        // The best one first, so that hopeless ones are left out at once.
        const last = column.length - 1;
        const [first, added] = [column[0], column[last]];
        if (first && added && added.score > first.score) [column[0], column[last]] = [added, first];
      }
    }
  }
}

/** Whether a split grapheme is open after the token; undefined when the token cannot stand here. */
function openAfter(path: Path, token: Token, letters: string): number | undefined {
  switch (path.open) {
    case 0:
      return token.closes ? undefined : token.opens ? 1 : 0;
    case 1:
      return token.closes || token.opens || token.saysVowel || token.part.sounds.length === 0 ? undefined : 2;
    case 2:
      if (token.closes) return 0;
      return letters === 't' && path.token?.part.letters === 's' && token.part.sounds.length === 1
        ? 3
        : undefined;
    default:
      return token.closes ? 0 : undefined;
  }
}

/** The likelier paths, of those that the model cannot tell apart any more only the best. */
function kept(paths: Path[]): readonly Path[] {
  const best: Path[] = [];
  for (const path of paths.sort((a, b) => b.score - a.score)) {
    if (best.length === beam || path.score < (best[0]?.score ?? path.score) - margin) break;
    if (!best.some((other) => isSameState(other, path))) best.push(path);
  }
  return best;
}

function isSameState(left: Path, right: Path): boolean {
  if (left.open !== right.open || left.context.length !== right.context.length) return false;
  const depth = left.context.length - 1;
  return left.context[depth] === right.context[depth];
}

function partsOf(last: Path | undefined): readonly AlignedPart[] {
  const parts: AlignedPart[] = [];
  for (let path = last; path?.token; path = path.before) if (!path.token.closes) parts.push(path.token.part);
  return parts.reverse();
}

/** A reading whose model gave no vowel the main stress has it on its first vowel. */
function stressed(parts: readonly AlignedPart[]): readonly AlignedPart[] {
  if (parts.some((part) => part.stress === 1)) return parts;
  const first = parts.findIndex((part) => part.sounds.some(isVowel));
  return parts.map((part, index) => (index === first ? { ...part, stress: 1 as const } : part));
}

function silent(letters: string): Token {
  return { number: -1, part: { letters, sounds: [] }, opens: false, closes: false, saysVowel: false };
}

const known: ReadonlySet<string> = new Set(phonemes);

function tokenOf(name: string, number: number): Token {
  const [letters = '', sounds = '', stress = ''] = name.split('\t');
  const list = sounds.split(' ').filter((sound): sound is Phoneme => known.has(sound));
  const part =
    stress === '' ? { letters, sounds: list } : { letters, sounds: list, stress: Number(stress) as Stress };
  return {
    number,
    part,
    opens: letters.length > 2 && letters.endsWith('_e'),
    closes: name === closingE,
    saysVowel: list.some(isVowel),
  };
}
