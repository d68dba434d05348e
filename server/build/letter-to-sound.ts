import { readFileSync, writeFileSync } from 'node:fs';
import { dictionary } from 'cmu-pronouncing-dictionary';
import { isVowel, type Phoneme } from '../src/phonics/phoneme.ts';
import { readByEnsemble } from './letter-to-sound/ensemble.ts';
import { type Score, scoreReadings } from './letter-to-sound/score.ts';
import {
  formatWordList,
  type ListedWord,
  parseWordList,
  splitWords,
  wordsOfDictionary,
} from './letter-to-sound/word-list.ts';

/**
 * Measures letter-to-sound conversion as the literature does.
 *
 *     npm run letter-to-sound -- TRAIN TEST [--at-most PERCENT] [--wrong FILE]
 *     npm run letter-to-sound -- --split SEED [TRAIN TEST] [--at-most PERCENT]
 *
 * TRAIN and TEST have lines of `word<TAB>ARPAbet`, stress ignored; several lines of a word are several readings, any of which
 * is right. `--split` draws 12,000 test words of the CMU dictionary's alphabetic ones (alternates stay with their word),
 * trains on the rest, and writes both lists first when two files are named. Exit 1 when more than `--at-most` percent
 * of the test words are wrong, 2 when the call or a file cannot be used.
 */
const testSize = 12_000;

try {
  process.exitCode = await measure(process.argv.slice(2));
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 2;
}

async function measure(call: readonly string[]): Promise<number> {
  const { files, options } = readCall(call);
  const { train, test } = listsOf(files, options.get('split'));
  const started = performance.now();
  const known = new Set(train.map(({ word }) => word));
  const shared = test.filter(({ word }) => known.has(word)).length;
  if (shared > 0) console.warn(`${shared} of the test words are training words too.`);
  const readings = await readByEnsemble(
    train,
    test.map(({ word }) => word),
  );
  const given = readings.map((list) => list[0]?.phones ?? []);
  const score = scoreReadings(test, given);
  report('all', score);
  const short = test
    .map((word, index) => ({ word, said: given[index] ?? [] }))
    .filter(({ word }) => isShort(word));
  report(
    'one syllable, up to five letters',
    scoreReadings(
      short.map(({ word }) => word),
      short.map(({ said }) => said),
    ),
  );
  const seconds = (performance.now() - started) / 1000;
  console.log(`trained on ${train.length} words; ${seconds.toFixed(0)} s in all`);
  const wrongFile = options.get('wrong');
  if (wrongFile) writeFileSync(wrongFile, wrongLines(test, given));
  const limit = Number(options.get('at-most') ?? 100);
  return (100 * score.wrong) / score.words > limit ? 1 : 0;
}

function report(name: string, { words, wrong, phones, phoneErrors, wrongByReducedVowel }: Score): void {
  const percent = (part: number, whole: number) =>
    whole === 0 ? '-' : `${((100 * part) / whole).toFixed(2)} %`;
  console.log(
    `${name}: ${percent(wrong, words)} of ${words} words wrong ` +
      `(${percent(wrongByReducedVowel, words)} only by IH for AH or AO for AA), ${percent(phoneErrors, phones)} of phones`,
  );
}

function listsOf(
  [trainFile, testFile]: readonly string[],
  seed: string | undefined,
): { readonly train: readonly ListedWord[]; readonly test: readonly ListedWord[] } {
  if (seed === undefined) {
    if (!trainFile || !testFile)
      throw new Error('Call: npm run letter-to-sound -- TRAIN TEST, or --split SEED');
    return {
      train: parseWordList(readFileSync(trainFile, 'utf8')),
      test: parseWordList(readFileSync(testFile, 'utf8')),
    };
  }
  const lists = splitWords(wordsOfDictionary(dictionary), { testSize, seed: Number(seed) });
  if (trainFile && testFile) {
    writeFileSync(trainFile, formatWordList(lists.train));
    writeFileSync(testFile, formatWordList(lists.test));
  }
  return lists;
}

function readCall(call: readonly string[]): {
  readonly files: string[];
  readonly options: Map<string, string>;
} {
  const files: string[] = [];
  const options = new Map<string, string>();
  for (let at = 0; at < call.length; at++) {
    const argument = call[at] as string;
    if (!argument.startsWith('--')) files.push(argument);
    else if (!['--split', '--at-most', '--wrong'].includes(argument))
      throw new Error(`Unknown option ${argument}`);
    else options.set(argument.slice(2), call[++at] ?? '');
  }
  return { files, options };
}

function isShort({ word, readings }: ListedWord): boolean {
  const syllables = readings[0]?.filter((phone) => isVowel(phone as Phoneme)).length;
  return word.length <= 5 && syllables === 1;
}

function wrongLines(words: readonly ListedWord[], given: readonly (readonly string[])[]): string {
  const lines = words.flatMap(({ word, readings }, index) => {
    const said = (given[index] ?? []).join(' ');
    const listed = readings.map((reading) => reading.join(' '));
    return listed.includes(said) ? [] : [`${word}\t${said}\t${listed.join('\t')}\n`];
  });
  return lines.join('');
}
