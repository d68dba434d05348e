import { describe, expect, it } from 'vitest';
import type { Reading } from '../../server/src/phonics/reading.ts';
import { cut, phonics } from '../support/reads.ts';
import { expectKept } from './kept-table.ts';
import { lexicon } from './lexicon-words.ts';

// A word built of listed words, or of one and a prefix or suffix, that sounds like its pieces is cut like its pieces:
// peaceful as p-ea-ce, thickness as th-i-ck (a check of the lexicon against itself; no source).
const prefixes = ['un', 'dis', 'mis', 'over', 'under', 'out', 'fore'];
const suffixes = ['ful', 'less', 'ness', 'ment', 'ship', 'some', 'ward'];

/** Words that only look so built. */
const other: ReadonlySet<string> = new Set(['firedamp', 'hereabout', 'goddamned', 'missing']);

describe('words built of other words', () => {
  const built: string[] = [];
  const differing: string[] = [];
  for (const { word, band, readings } of lexicon.entries()) {
    if (band < 2 || !/^[a-z]{5,}$/.test(word) || other.has(word) || readings.length === 0) continue;
    const [reading] = phonics.readingsOf(word);
    const pieces = reading && piecesOf(word, reading);
    if (reading === undefined || pieces === undefined) continue;
    built.push(word);
    if (!holds(cut(reading), pieces)) {
      differing.push(`${word}\t${cut(reading)}\t${pieces.before}…${pieces.after}`);
    }
  }

  it('are cut like them in at least 99 of 100', () => {
    expect(built.length).toBeGreaterThan(1500);
    expect(1 - differing.length / built.length).toBeGreaterThan(0.99);
  });

  it('differ where the kept table says', () => {
    expectKept('built-words.tsv', `word\there\tpieces\n${differing.join('\n')}\n`);
  });
});

interface Pieces {
  /** The cut of the first piece, empty for a prefix. */
  readonly before: string;
  /** The cut of the second piece, empty for a suffix. */
  readonly after: string;
}

function holds(letters: string, { before, after }: Pieces): boolean {
  if (before === '') return letters.endsWith(`-${after}`);
  if (after === '') return letters.startsWith(`${before}-`);
  return letters === `${before}-${after}`;
}

function piecesOf(word: string, reading: Reading): Pieces | undefined {
  const sounds = soundsOf(reading);
  for (let border = 2; border <= word.length - 3; border += 1) {
    const [first, second] = [word.slice(0, border), word.slice(border)];
    const [left, right] = [commonReading(first), commonReading(second)];
    if (left && right && sounds === soundsOf(left) + soundsOf(right)) {
      return { before: cut(left), after: cut(right) };
    }
    // The ss of dissatisfied says one S: no border can be heard in it.
    if (right && prefixes.includes(first) && first.at(-1) !== second[0] && sounds.endsWith(soundsOf(right))) {
      return { before: '', after: cut(right) };
    }
    if (left && suffixes.includes(second) && sounds.startsWith(soundsOf(left))) {
      return { before: cut(left), after: '' };
    }
  }
  return undefined;
}

function commonReading(word: string): Reading | undefined {
  const entry = word.length < 3 ? undefined : lexicon.find(word);
  return entry && entry.band >= 3 ? phonics.readingsOf(word)[0] : undefined;
}

/** The sounds in a row, accent noise merged. */
function soundsOf({ parts }: Reading): string {
  return parts
    .flatMap(({ sounds }) => sounds)
    .join(' ')
    .concat(' ')
    .replaceAll('AO', 'AA')
    .replaceAll('IH', 'AH')
    .replaceAll('IY R', 'AH R')
    .replaceAll('AE R', 'EH R');
}
