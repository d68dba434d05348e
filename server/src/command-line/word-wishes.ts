import { resolve } from 'node:path';
import { partOfSpeech } from '../phonics/lexicon.ts';
import { readStory } from '../story/read-story.ts';
import { foldedWord } from '../text/folded-word.ts';
import { isTrouble, readSound, readSpelling, type Trouble } from '../words/read-wish.ts';
import { type NumberRange, type WordQuery, wordPlaces } from '../words/word-query.ts';
import type { CommandOption } from './command.ts';
import { fileTrouble } from './file-trouble.ts';
import type { Host } from './host.ts';

/** The options that say which words are wanted. */
export const wordWishOptions: readonly CommandOption[] = [
  {
    name: 'with',
    value: 'SPELLING',
    description: 'words that hold these letters as whole graphemes: sh, a_e, st, “ow as in snow”',
  },
  { name: 'sound', value: 'SOUND', description: 'words that hold this sound: AY, or ī' },
  {
    name: 'place',
    value: 'PLACE',
    description: 'where in the word the spelling, or else the sound, stands',
    choices: wordPlaces,
  },
  { name: 'sounds', value: 'N', description: 'words of so many sounds: 3, or 3-4' },
  { name: 'syllables', value: 'N', description: 'words of so many syllables: 1, or 1-2' },
  {
    name: 'part-of-speech',
    value: 'KIND',
    description: 'words that can be this',
    choices: Object.keys(partOfSpeech),
  },
  { name: 'new', description: 'words that practise what is new in the lesson' },
  { name: 'used-in', value: 'FILE', description: 'words that this text uses' },
  { name: 'unused-in', value: 'FILE', description: 'words that this text does not use' },
  { name: 'base', description: 'no forms with endings (cats, jumped)' },
  { name: 'rare', description: 'rare words too' },
  { name: 'limit', value: 'N', description: 'so many words, at most (60)' },
];

/** Reads the options into a query, or says what cannot be meant. */
export function readWordWishes(
  options: ReadonlyMap<string, string>,
  host: Host,
): { readonly query: WordQuery } | { readonly message: string } {
  const trouble: string[] = [];
  const take = <Value>(name: string, read: (given: string) => Value | Trouble): Value | undefined => {
    const given = options.get(name);
    if (given === undefined) return undefined;
    const value = read(given);
    if (!isTrouble(value)) return value;
    trouble.push(value.trouble);
    return undefined;
  };
  const spelling = take('with', (given) => readSpelling(given, host.phonics()));
  const sound = take('sound', readSound);
  const place = wordPlaces.find((each) => each === options.get('place'));
  const sounds = take('sounds', (given) => readRange(given, 'sounds'));
  const syllables = take('syllables', (given) => readRange(given, 'syllables'));
  const kind = take('part-of-speech', (given) => partOfSpeech[given as keyof typeof partOfSpeech]);
  const limit = take('limit', (given) => readNumber(given, 'limit', { least: 1, most: 100_000 })) ?? 60;
  const used = take('used-in', (given) => wordsOfFile(given, host));
  const unused = take('unused-in', (given) => wordsOfFile(given, host));
  if (place !== undefined && !options.has('with') && !options.has('sound')) {
    trouble.push('--place says where a spelling or sound stands; give --with or --sound too.');
  }
  if (used !== undefined && unused !== undefined) trouble.push('Give --used-in or --unused-in, not both.');
  const first = trouble[0];
  if (first !== undefined) return { message: first };
  return {
    query: {
      ...(spelling && { spelling }),
      ...(sound && { sound }),
      ...(place && { place }),
      ...(sounds && { sounds }),
      ...(syllables && { syllables }),
      ...(kind && { partOfSpeech: kind }),
      ...(used && { used: { words: used, isUsed: true } }),
      ...(unused && { used: { words: unused, isUsed: false } }),
      isNew: options.has('new'),
      baseFormsOnly: options.has('base'),
      includesRare: options.has('rare'),
      limit,
    },
  };
}

/** Reads a whole number within a range. */
export function readNumber(given: string, option: string, { least, most }: NumberRange): number | Trouble {
  const number = /^\d{1,10}$/.test(given) ? Number(given) : Number.NaN;
  return number >= least && number <= most
    ? number
    : { trouble: `--${option} takes a whole number from ${least} to ${most}; “${given}” is none.` };
}

function readRange(given: string, option: string): NumberRange | Trouble {
  const [, from, to] = /^(\d{1,2})(?:-(\d{1,2}))?$/.exec(given) ?? [];
  if (from === undefined) {
    return { trouble: `--${option} takes a number such as 3, or two such as 3-4; “${given}” is neither.` };
  }
  const least = Number(from);
  const most = to === undefined ? least : Number(to);
  return least <= most ? { least, most } : { least: most, most: least };
}

function wordsOfFile(given: string, host: Host): ReadonlySet<string> | Trouble {
  const read = host.readFile(resolve(host.workingFolder, given));
  if (read.kind !== 'text') return { trouble: `The file “${given}” ${fileTrouble(read)}.` };
  const { pages, title } = readStory(read.text);
  const words = [
    ...(title?.words ?? []),
    ...pages.flatMap(({ page }) => page.sentences.flatMap((sentence) => sentence.words)),
  ];
  return new Set(words.map(({ text }) => foldedWord(text)));
}
