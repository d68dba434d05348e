import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { rowsOf } from '../../server/src/phonics/table.ts';
import { phonics } from '../support/reads.ts';
import { sharesOf } from './hanna-shares.ts';
import { expectKept } from './kept-table.ts';
import { commonWords } from './lexicon-words.ts';

// Hanna, Hanna, Hodges & Rudorf, Phoneme-grapheme correspondences as cues to spelling improvement, 1966: the share of each
// sound's spellings in 17,310 words. 75 rows read in a secondary source, 44 from memory (column status).
const published = rowsOf(readFileSync(new URL('data/hanna-1966.tsv', import.meta.url), 'utf8'), [
  'sound_as_named',
  'arpabet_nearest',
  'spelling',
  'percent_of_occurrences',
  'status',
]);

/** Rows that no like-for-like count can compare, with the reason. */
const definitional: ReadonlyMap<string, string> = new Map([
  ['hw wh', 'our dictionary has no such sound: most speakers say wh as w'],
  [
    'âr ar',
    'a before r and a vowel (carol, character) is short a there and the vowel of care here: General American merges them',
  ],
]);

const shares = sharesOf(
  commonWords().flatMap((entry) => {
    const [reading] = phonics.readingsOf(entry.word);
    return reading ? [{ entry, reading }] : [];
  }),
);

const rows = published.map((row) => {
  const spelling = spellingOf(row.sound_as_named, row.spelling);
  const name = `${row.sound_as_named} ${row.spelling}`;
  const ours = shares.get(soundOf(row.sound_as_named, row.arpabet_nearest))?.get(spelling) ?? 0;
  return {
    name,
    ours,
    theirs: Number(row.percent_of_occurrences),
    status: row.status,
    reason: definitional.get(name),
  };
});

describe('spellings of each sound, beside Hanna et al. 1966', () => {
  const shared = rows.filter(({ name }) => name !== 'hw wh');

  it('correlate at .96 or more over the shared rows', () => {
    expect(
      correlation(
        shared.map(({ ours }) => ours),
        shared.map(({ theirs }) => theirs),
      ),
    ).toBeGreaterThanOrEqual(0.96);
  });

  it('differ by more than 15 points only where the definitions do', () => {
    const far = rows.filter(({ ours, theirs }) => Math.abs(ours - theirs) > 15).map(({ name }) => name);
    expect(far.sort()).toEqual([...definitional.keys()].sort());
  });

  it('have the kept figures', () => {
    expectKept(
      'hanna-1966.md',
      [
        `Words: ${commonWords().length}. Correlation over ${shared.length} shared rows: ${correlation(
          shared.map(({ ours }) => ours),
          shared.map(({ theirs }) => theirs),
        ).toFixed(3)}.`,
        '',
        '| sound | spelling | 1966 | here | note |',
        '|---|---|---|---|---|',
        ...published.map((row, index) => {
          const { ours = 0, theirs = 0, reason = '' } = rows[index] ?? {};
          const source = row.status === 'from memory' ? 'published figure from memory' : '';
          return `| ${row.sound_as_named} | ${row.spelling} | ${theirs} % | ${ours.toFixed(1)} % | ${[reason, source].filter((note) => note !== '').join('; ')} |`;
        }),
        '',
      ].join('\n'),
    );
  });
});

function soundOf(named: string, arpabet: string): string {
  if (named === 'ûr') return 'weak ER';
  return arpabet.replace(/[/(].*/, '').trim();
}

function spellingOf(named: string, spelling: string): string {
  const letters = spelling.replace(/ .*/, '');
  return named.startsWith('ēr') && letters === 'e_e' ? 'ere' : letters;
}

function correlation(left: readonly number[], right: readonly number[]): number {
  const mean = (list: readonly number[]): number => list.reduce((sum, value) => sum + value, 0) / list.length;
  const [leftMean, rightMean] = [mean(left), mean(right)];
  const product = left.reduce(
    (sum, value, index) => sum + (value - leftMean) * ((right[index] ?? 0) - rightMean),
    0,
  );
  const spread = (list: readonly number[], middle: number): number =>
    Math.sqrt(list.reduce((sum, value) => sum + (value - middle) ** 2, 0));
  return product / (spread(left, leftMean) * spread(right, rightMean));
}
