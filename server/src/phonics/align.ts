import type { Correspondence } from './inventory.ts';
import { isVowel, type Phoneme, phonemes, type Stress } from './phoneme.ts';

/** A sound of a pronunciation: a phoneme, with its stress when it is a vowel. */
export interface Sound {
  readonly phoneme: Phoneme;
  readonly stress?: Stress;
}

/** A stretch of an alignment: a correspondence of the inventory and the stress its vowel has here. */
export interface AlignedPart {
  readonly letters: string;
  readonly sounds: readonly Phoneme[];
  readonly stress?: Stress;
}

/** The cheapest way to lay a pronunciation along the letters. */
export interface Alignment {
  /** In the order of their first letter. */
  readonly parts: readonly AlignedPart[];
  /** The sum of the parts' costs and of what the rules below add. */
  readonly cost: number;
}

/** Lays pronunciations along letters; undefined when the inventory cannot. */
export type Aligner = (letters: string, sounds: readonly Sound[]) => Alignment | undefined;

/** What a vowel of another stress than the table names adds to a correspondence. */
const otherStress = 1.2;
/** What standing elsewhere than at the end (or start) that the table names adds. */
const otherPlace = 2.4;
/** ER may be read as a vowel letter and a separate r (*a-r-ou-n-d*): free before a stressed vowel, else at this cost. */
const splitER = 2;
/** …and before a stressed vowel a single grapheme for ER costs this much more. */
const wholeERBeforeStress = 1.5;
/** Two consonants between a split vowel and its e (*t-a_e-s-t*): only s and t, and dearer than one. */
const longSplit = 0.4;

/**
 * An aligner for an inventory. It finds the cheapest path through letters and sounds (dynamic programming, exact), with
 * a split vowel closing over one consonant grapheme and a silent e.
 */
export function createAligner(inventory: readonly Correspondence[]): Aligner {
  const table = compile(inventory);
  return (letters, sounds) => {
    const units = unitsOf(sounds);
    const search = new Search(table, letters, units);
    return search.best();
  };
}

/** One phoneme, or a half of ER: its vowel (`erVowel`) or its r (`erR`). */
interface Unit {
  readonly code: number;
  readonly stress: Stress | undefined;
}

interface Entry {
  readonly row: Correspondence;
  readonly codes: readonly number[];
}

interface Table {
  readonly plain: ReadonlyMap<string, readonly Entry[]>;
  readonly split: ReadonlyMap<string, readonly Entry[]>;
  readonly longest: number;
}

const erVowel = phonemes.length;
const erR = phonemes.length + 1;
const codeOf = new Map<Phoneme, number>(phonemes.map((phoneme, index) => [phoneme, index]));
const codeAH = codeOf.get('AH') ?? -1;
const codeR = codeOf.get('R') ?? -1;

function codesOf(sounds: readonly Phoneme[]): number[] {
  return sounds.flatMap((phoneme) => (phoneme === 'ER' ? [erVowel, erR] : [codeOf.get(phoneme) ?? -1]));
}

function unitsOf(sounds: readonly Sound[]): Unit[] {
  return sounds.flatMap(({ phoneme, stress }) =>
    phoneme === 'ER'
      ? [
          { code: erVowel, stress },
          { code: erR, stress: undefined },
        ]
      : [{ code: codeOf.get(phoneme) ?? -1, stress }],
  );
}

function compile(inventory: readonly Correspondence[]): Table {
  const plain = new Map<string, Entry[]>();
  const split = new Map<string, Entry[]>();
  let longest = 1;
  for (const row of inventory) {
    const isSplit = row.letters.endsWith('_e');
    const key = isSplit ? row.letters.slice(0, -2) : row.letters;
    const map = isSplit ? split : plain;
    map.set(key, [...(map.get(key) ?? []), { row, codes: codesOf(row.sounds) }]);
    if (!isSplit) longest = Math.max(longest, key.length);
  }
  return { plain, split, longest };
}

interface Step {
  readonly from: number;
  readonly parts: readonly AlignedPart[];
}

class Search {
  readonly #table: Table;
  readonly #letters: string;
  readonly #units: readonly Unit[];
  readonly #width: number;
  readonly #costs: Float64Array;
  readonly #steps: (Step | undefined)[];

  constructor(table: Table, letters: string, units: readonly Unit[]) {
    this.#table = table;
    this.#letters = letters;
    this.#units = units;
    this.#width = units.length + 1;
    const size = (letters.length + 1) * this.#width;
    this.#costs = new Float64Array(size).fill(Number.POSITIVE_INFINITY);
    this.#steps = new Array<Step | undefined>(size).fill(undefined);
    this.#costs[0] = 0;
  }

  best(): Alignment | undefined {
    for (let at = 0; at < this.#letters.length; at++) {
      for (let unit = 0; unit < this.#width; unit++) {
        const cost = this.#costs[at * this.#width + unit] ?? Number.POSITIVE_INFINITY;
        if (cost < Number.POSITIVE_INFINITY) this.#expand(at, unit, cost);
      }
    }
    const last = this.#costs.length - 1;
    const cost = this.#costs[last] ?? Number.POSITIVE_INFINITY;
    if (cost === Number.POSITIVE_INFINITY) return undefined;
    const parts: AlignedPart[] = [];
    for (let node = last; node > 0; ) {
      const step = this.#steps[node];
      if (!step) break;
      parts.unshift(...step.parts);
      node = step.from;
    }
    return { parts, cost };
  }

  #expand(at: number, unit: number, cost: number): void {
    for (let length = 1; length <= this.#table.longest && at + length <= this.#letters.length; length++) {
      for (const entry of this.#table.plain.get(this.#letters.slice(at, at + length)) ?? []) {
        const paid = this.#price(entry, at, at + length, unit);
        if (paid !== undefined) {
          this.#reach(at, unit, at + length, unit + entry.codes.length, cost + paid, [
            this.#part(entry, unit),
          ]);
        }
      }
    }
    for (const vowel of this.#table.split.get(this.#letters[at] ?? '') ?? []) {
      const paid = this.#price(vowel, at, at + 1, unit);
      if (paid !== undefined) this.#closeSplit(vowel, at, unit, cost + paid);
    }
  }

  #closeSplit(vowel: Entry, at: number, unit: number, cost: number): void {
    const after = unit + vowel.codes.length;
    const tail = this.#letters.startsWith('ste', at + 1) ? ['s', 't'] : undefined;
    for (let length = 1; length <= 3; length++) {
      const start = at + 1;
      const end = start + length;
      if (this.#letters[end] !== 'e') continue;
      for (const consonant of this.#table.plain.get(this.#letters.slice(start, end)) ?? []) {
        // Vowel, r and e are one grapheme (care, fire), never a split one.
        if (consonant.codes.length === 0 || isVowelEntry(consonant) || consonant.row.letters === 'r')
          continue;
        const paid = this.#price(consonant, start, end, after);
        if (paid === undefined) continue;
        const parts = [this.#part(vowel, unit), this.#part(consonant, after)];
        const inside = end + 1 === this.#letters.length ? 0 : 0.3;
        this.#reach(at, unit, end + 1, after + consonant.codes.length, cost + paid + inside, parts);
      }
    }
    if (!tail) return;
    const [s, t] = tail.map((letter) =>
      this.#table.plain.get(letter)?.find((entry) => entry.codes.length === 1 && entry.row.cost === 1),
    );
    if (!s || !t) return;
    if (
      this.#price(s, at + 1, at + 2, after) === undefined ||
      this.#price(t, at + 2, at + 3, after + 1) === undefined
    )
      return;
    const parts = [this.#part(vowel, unit), this.#part(s, after), this.#part(t, after + 1)];
    this.#reach(at, unit, at + 4, after + 2, cost + s.row.cost + t.row.cost + longSplit, parts);
  }

  /** What `entry` costs on letters `at` to `end` for the sounds from `unit`; undefined when they do not agree. */
  #price(entry: Entry, at: number, end: number, unit: number): number | undefined {
    const { codes, row } = entry;
    if (unit + codes.length > this.#units.length) return undefined;
    let price = row.cost;
    for (let index = 0; index < codes.length; index++) {
      const wanted = codes[index];
      const there = this.#units[unit + index]?.code;
      if (wanted === there) continue;
      if (wanted === codeAH && there === erVowel && codes.length === 1)
        price += this.#beforeStress(unit + 2) ? 0 : splitER;
      else if (wanted === codeR && there === erR && codes.length === 1) price += 0;
      else return undefined;
    }
    if (codes.length > 1 && codes[codes.length - 1] === erR && this.#beforeStress(unit + codes.length))
      price += wholeERBeforeStress;
    if (codes[0] === erR) return undefined;
    return price + this.#misplaced(row, at, end, unit);
  }

  #misplaced(row: Correspondence, at: number, end: number, unit: number): number {
    switch (row.when) {
      case 'anywhere':
        return 0;
      case 'final':
        return end === this.#letters.length || this.#letters[end] === "'" ? 0 : otherPlace;
      case 'initial':
        return at === 0 ? 0 : otherPlace;
      case 'unstressed':
      case 'stressed': {
        const stress = this.#stressAt(unit, row.sounds.length + 1);
        const holds = row.when === 'unstressed' ? stress === 0 : stress !== 0;
        return holds ? 0 : otherStress;
      }
    }
  }

  #beforeStress(unit: number): boolean {
    const stress = this.#units[unit]?.stress;
    return stress === 1 || stress === 2;
  }

  #stressAt(unit: number, count: number): Stress | undefined {
    for (let index = unit; index < unit + count; index++) {
      const stress = this.#units[index]?.stress;
      if (stress !== undefined) return stress;
    }
    return undefined;
  }

  #part(entry: Entry, unit: number): AlignedPart {
    const { letters, sounds } = entry.row;
    const vowel = sounds.findIndex(isVowel);
    if (vowel < 0) return { letters, sounds };
    const stress = this.#stressAt(unit, entry.codes.length);
    return stress === undefined ? { letters, sounds } : { letters, sounds, stress };
  }

  #reach(
    at: number,
    unit: number,
    nextAt: number,
    nextUnit: number,
    cost: number,
    parts: readonly AlignedPart[],
  ): void {
    const node = nextAt * this.#width + nextUnit;
    if (cost >= (this.#costs[node] ?? Number.POSITIVE_INFINITY)) return;
    this.#costs[node] = cost;
    this.#steps[node] = { from: at * this.#width + unit, parts };
  }
}

function isVowelEntry(entry: Entry): boolean {
  return entry.row.sounds.some(isVowel);
}
