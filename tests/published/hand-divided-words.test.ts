import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { phonics } from '../support/reads.ts';
import { expectKept } from './kept-table.ts';

// Words of grades 1 and 2 divided by hand as American dictionaries print them (data/hand-divided-words.txt; from memory).
// The rules were changed by what this list showed: it guards them, and measures nothing unseen any more.
const divided = readFileSync(new URL('data/hand-divided-words.txt', import.meta.url), 'utf8')
  .split('\n')
  .filter((line) => line !== '' && !line.startsWith('#'));

describe('words divided by hand', () => {
  const differing = divided.flatMap((hand) => {
    const [reading] = phonics.readingsOf(hand.replaceAll('-', ''));
    const here = reading?.syllables.map(({ text }) => text).join('-') ?? '';
    return here === hand ? [] : [`${hand}\t${here}`];
  });

  it('are divided so in at least 99 of 100', () => {
    expect(1 - differing.length / divided.length).toBeGreaterThan(0.99);
  });

  it('differ where the kept table says', () => {
    expectKept('hand-divided-words.tsv', `by hand\there\n${differing.join('\n')}\n`);
  });
});
