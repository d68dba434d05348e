import type { AlignedPart } from './align.ts';
import type { Change } from './inflection.ts';
import { type Phoneme, phonemes, type Stress } from './phoneme.ts';
import type { Ending } from './reading.ts';

/** A pronunciation as the lexicon keeps it: parts, and the ending it was aligned with, if any. */
export interface StoredReading {
  readonly parts: readonly AlignedPart[];
  readonly inflection?: StoredInflection;
}

/** The ending of a stored reading. */
export interface StoredInflection {
  readonly ending: Ending;
  readonly change: Change;
  /** How many of the parts at the end are the ending's. */
  readonly endingParts: number;
  /** Which of the base's stored readings this one is made of. */
  readonly baseReading: number;
}

/** Parts of speech a word can be, as bits of {@link Entry.partsOfSpeech}. From WordNet. */
export const partOfSpeech = { noun: 1, verb: 2, adjective: 4, adverb: 8 } as const;

/** A word of the lexicon. */
export interface Entry {
  readonly word: string;
  /** How common it is: 0 (rare or a name) to 7 (among the commonest few hundred). */
  readonly band: number;
  readonly partsOfSpeech: number;
  /** Where a compound's second half begins. */
  readonly compound?: number;
  /** The default first. */
  readonly readings: readonly StoredReading[];
}

/** The pronouncing lexicon, searched in place in its file's bytes. */
export interface Lexicon {
  /** How many words it holds. */
  readonly size: number;
  /** The word's entry; `word` in lower case with a straight apostrophe. */
  find(word: string): Entry | undefined;
  /** Every entry in the order of the letters; each step decodes one. */
  entries(): Iterable<Entry>;
  /** A table that travels in the same file, by name: the text of its TSV; empty when it is not there. */
  table(name: string): string;
}

/** The codes of endings in the file: `d` is the ending ed of which only the d is its own (*freed*). */
const endingCodes = [
  's',
  'es',
  'ed',
  'd',
  'ing',
  'er',
  'est',
  'y',
  'ly',
  "'s",
  "n't",
  "'ll",
  "'re",
  "'ve",
  "'d",
  "'m",
] as const;
/** How many parts each ending has, in the order of the codes. */
const endingLengths = [1, 1, 1, 1, 2, 1, 3, 1, 2, 1, 2, 1, 1, 1, 1, 1] as const;
const changeCodes: readonly Change[] = [
  'none',
  'doubled',
  'dropped e',
  'y to i',
  'ie to y',
  'f to v',
  'dropped le',
];

const blockSize = 16;
const magic = 'battledore lexicon 1\n';

/** How many parts an ending's own letters make; `d` stands for the ending ed that shares its e with the base. */
export function endingPartsOf(ending: Ending | 'd'): number {
  return endingLengths[(endingCodes as readonly string[]).indexOf(ending)] ?? 0;
}

/**
 * Writes a lexicon file: a header, the tables, the list of correspondences, the index and the blocks. Words are
 * front-coded in blocks of sixteen, parts are numbers of correspondences, the most frequent in one byte.
 */
export function encodeLexicon(
  entries: readonly Entry[],
  tables: Readonly<Record<string, string>>,
): Uint8Array {
  const sorted = [...entries].sort((left, right) =>
    left.word < right.word ? -1 : left.word > right.word ? 1 : 0,
  );
  const codes = new Map(correspondencesOf(sorted).map((text, index) => [text, index]));
  const blocks: number[] = [];
  const index: number[] = [];
  let previous = '';
  for (const [place, entry] of sorted.entries()) {
    if (place % blockSize === 0) {
      index.push(blocks.length);
      previous = '';
    }
    writeEntry(blocks, entry, previous, codes);
    previous = entry.word;
  }
  const head = `${magic}${sorted.length}\n`;
  const names = Object.keys(tables).sort();
  const sections = [
    ...names.map((name) => [name, tables[name] ?? ''] as const),
    ['correspondences', [...codes.keys()].join('\n')] as const,
  ];
  const body = sections.map(([name, text]) => `${name}\n${text.length}\n${text}`).join('');
  return joinBytes(bytesOf(`${head}${body}\n`), index, blocks);
}

/** Opens a lexicon file in place; nothing is decoded but the list of correspondences. Throws when it is not one. */
export function openLexicon(bytes: Uint8Array): Lexicon {
  return new FileLexicon(bytes);
}

class FileLexicon implements Lexicon {
  readonly size: number;
  readonly #bytes: Uint8Array;
  readonly #tables = new Map<string, string>();
  readonly #parts: readonly AlignedPart[];
  readonly #index: number;
  readonly #blocks: number;
  readonly #count: number;

  constructor(bytes: Uint8Array) {
    this.#bytes = bytes;
    const reader = { at: 0 };
    if (`${this.#line(reader)}\n` !== magic)
      throw new Error('This is not a Battledore lexicon of this version.');
    this.size = Number(this.#line(reader));
    while (bytes[reader.at] !== 0x0a) {
      const name = this.#line(reader);
      const length = Number(this.#line(reader));
      this.#tables.set(name, this.#text(reader.at, reader.at + length));
      reader.at += length;
    }
    this.#count = Math.ceil(this.size / blockSize);
    this.#index = reader.at + 1;
    this.#blocks = this.#index + this.#count * 4;
    this.#parts = (this.#tables.get('correspondences') ?? '').split('\n').map(partOf);
  }

  table(name: string): string {
    return this.#tables.get(name) ?? '';
  }

  find(word: string): Entry | undefined {
    let low = 0;
    let high = this.#count - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (this.#compareFirst(middle, word) <= 0) low = middle;
      else high = middle - 1;
    }
    const cursor = { at: this.#offset(low), word: '' };
    const end = low + 1 < this.#count ? this.#offset(low + 1) : this.#bytes.length;
    while (cursor.at < end) {
      this.#readWord(cursor);
      if (cursor.word === word) return this.#readEntry(cursor);
      if (cursor.word > word) return undefined;
      this.#skip(cursor);
    }
    return undefined;
  }

  *entries(): Iterable<Entry> {
    for (let block = 0; block < this.#count; block++) {
      const cursor = { at: this.#offset(block), word: '' };
      const end = block + 1 < this.#count ? this.#offset(block + 1) : this.#bytes.length;
      while (cursor.at < end) {
        this.#readWord(cursor);
        yield this.#readEntry(cursor);
      }
    }
  }

  #byte(at: number): number {
    return this.#bytes[at] ?? 0;
  }

  #offset(block: number): number {
    const at = this.#index + block * 4;
    return (
      this.#blocks +
      this.#byte(at) +
      (this.#byte(at + 1) << 8) +
      (this.#byte(at + 2) << 16) +
      this.#byte(at + 3) * 0x1000000
    );
  }

  #compareFirst(block: number, word: string): number {
    const at = this.#offset(block);
    const length = this.#byte(at + 1);
    for (let index = 0; index < length && index < word.length; index++) {
      const difference = this.#byte(at + 2 + index) - word.charCodeAt(index);
      if (difference !== 0) return difference;
    }
    return length - word.length;
  }

  #readWord(cursor: { at: number; word: string }): void {
    const shared = this.#byte(cursor.at);
    const length = this.#byte(cursor.at + 1);
    cursor.word = cursor.word.slice(0, shared) + this.#text(cursor.at + 2, cursor.at + 2 + length);
    cursor.at += 2 + length;
  }

  /** Each entry's readings are preceded by their length in bytes, so that a search steps over them. */
  #skip(cursor: { at: number }): void {
    cursor.at += 2 + this.#byte(cursor.at) + (this.#byte(cursor.at + 1) << 8);
  }

  #readEntry(cursor: { at: number; word: string }): Entry {
    const end = cursor.at + 2 + this.#byte(cursor.at) + (this.#byte(cursor.at + 1) << 8);
    const flags = this.#byte(cursor.at + 2);
    cursor.at += 3;
    const isCompound = (flags & 0x80) !== 0;
    const compound = isCompound ? this.#byte(cursor.at++) : undefined;
    const readings: StoredReading[] = [];
    while (cursor.at < end) readings.push(this.#readReading(cursor));
    const entry = { word: cursor.word, band: flags & 7, partsOfSpeech: (flags >> 3) & 15, readings };
    return compound === undefined ? entry : { ...entry, compound };
  }

  #readReading(cursor: { at: number }): StoredReading {
    const head = this.#byte(cursor.at++);
    let inflection: StoredInflection | undefined;
    if (head & 0x80) {
      const how = this.#byte(cursor.at++);
      const which = this.#byte(cursor.at++);
      const code = endingCodes[how & 15] ?? 's';
      inflection = {
        ending: code === 'd' ? 'ed' : code,
        change: changeCodes[how >> 4] ?? 'none',
        endingParts: endingLengths[how & 15] ?? 0,
        baseReading: which,
      };
    }
    const parts: AlignedPart[] = [];
    for (let left = head & 0x7f; left > 0; left--) {
      let code = this.#byte(cursor.at++);
      if (code >= 0xc0) code = 0xc0 + ((code & 0x3f) << 8) + this.#byte(cursor.at++);
      const part = this.#parts[code];
      if (part) parts.push(part);
    }
    return inflection ? { parts, inflection } : { parts };
  }

  #line(reader: { at: number }): string {
    const start = reader.at;
    while (reader.at < this.#bytes.length && this.#bytes[reader.at] !== 0x0a) reader.at += 1;
    reader.at += 1;
    return this.#text(start, reader.at - 1);
  }

  #text(start: number, end: number): string {
    let text = '';
    for (let at = start; at < end; at += 8192) {
      text += String.fromCharCode(...this.#bytes.subarray(at, Math.min(end, at + 8192)));
    }
    return text;
  }
}

function writeEntry(
  bytes: number[],
  entry: Entry,
  previous: string,
  codes: ReadonlyMap<string, number>,
): void {
  let shared = 0;
  while (shared < previous.length && previous[shared] === entry.word[shared]) shared += 1;
  bytes.push(shared, entry.word.length - shared, ...bytesOf(entry.word.slice(shared)));
  const readings: number[] = [];
  for (const reading of entry.readings) writeReading(readings, reading, codes);
  const compound = entry.compound === undefined ? [] : [entry.compound];
  const length = readings.length + 1 + compound.length - 0;
  bytes.push(length & 0xff, length >> 8);
  bytes.push(
    (entry.band & 7) | (entry.partsOfSpeech << 3) | (compound.length > 0 ? 0x80 : 0),
    ...compound,
    ...readings,
  );
}

function writeReading(bytes: number[], reading: StoredReading, codes: ReadonlyMap<string, number>): void {
  const { inflection, parts } = reading;
  bytes.push(parts.length | (inflection ? 0x80 : 0));
  if (inflection) {
    const isShared = inflection.ending === 'ed' && parts[parts.length - 1]?.letters === 'd';
    const code = (endingCodes as readonly string[]).indexOf(isShared ? 'd' : inflection.ending);
    bytes.push(code | (changeCodes.indexOf(inflection.change) << 4), inflection.baseReading);
  }
  for (const part of parts) {
    const code = codes.get(textOf(part)) ?? 0;
    if (code < 0xc0) bytes.push(code);
    else bytes.push(0xc0 | ((code - 0xc0) >> 8), (code - 0xc0) & 0xff);
  }
}

/** Every part that occurs, the most frequent first, as text: letters, sounds, stress. */
function correspondencesOf(entries: readonly Entry[]): readonly string[] {
  const counts = new Map<string, number>();
  for (const entry of entries) {
    for (const { parts } of entry.readings) {
      for (const part of parts) counts.set(textOf(part), (counts.get(textOf(part)) ?? 0) + 1);
    }
  }
  return [...counts]
    .sort((left, right) => right[1] - left[1] || (left[0] < right[0] ? -1 : 1))
    .map(([text]) => text);
}

function textOf(part: AlignedPart): string {
  return `${part.letters}\t${part.sounds.join(' ')}\t${part.stress ?? ''}`;
}

const known: ReadonlySet<string> = new Set(phonemes);

function partOf(text: string): AlignedPart {
  const [letters = '', sounds = '', stress = ''] = text.split('\t');
  const list = sounds.split(' ').filter((sound): sound is Phoneme => known.has(sound));
  return stress === ''
    ? { letters, sounds: list }
    : { letters, sounds: list, stress: Number(stress) as Stress };
}

/** ASCII only: letters, tabs, our tables are kept to it by the build. */
function bytesOf(text: string): number[] {
  return Array.from(text, (character) => character.charCodeAt(0));
}

function joinBytes(head: readonly number[], index: readonly number[], blocks: readonly number[]): Uint8Array {
  const bytes = new Uint8Array(head.length + index.length * 4 + blocks.length);
  bytes.set(head, 0);
  index.forEach((offset, place) => {
    const at = head.length + place * 4;
    bytes.set([offset & 0xff, (offset >> 8) & 0xff, (offset >> 16) & 0xff, (offset >> 24) & 0xff], at);
  });
  bytes.set(blocks, head.length + index.length * 4);
  return bytes;
}
