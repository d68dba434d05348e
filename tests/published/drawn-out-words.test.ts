import { expect, test } from 'vitest';
import { packagePhonics } from '../support/package-phonics.ts';
import { reads } from '../support/reads.ts';
import { reviewed } from '../support/reviewed.ts';

// Common practice of children's books, no source: letters are repeated for a sound that is held.
test.each([
  ['Nooo', 'n-o'],
  ['beeeep', 'b-ee-p'],
  ['soooo', 's-o'],
  ['sooon', 's-oo-n'],
  ['pleeease', 'p-l-ea-se'],
  ['Wheeee', 'wh-ee'],
  ['Mooooo', 'm-oo'],
  ['sloooow', 's-l-ow'],
  ['miiine', 'm-i_e-n'],
  ['THUDDD', 'th-u-d'],
])('%s is read as %s', (word, cut) => {
  reads(word).as(cut);
  const [reading] = packagePhonics.readingsOf(word);
  expect(reading?.source).toBe('lexicon');
  // Every letter of the word as it is written belongs to a grapheme.
  const covered = reading?.parts.flatMap(({ spans }) => spans.map(([start, end]) => end - start)) ?? [];
  expect(covered.reduce((sum, length) => sum + length, 0)).toBe(word.length);
});

test.each(['grrr', 'zzzz', 'Blaaat'])('%s is no word that is drawn out', (word) => {
  expect(packagePhonics.readingsOf(word)[0]).toMatchObject({ source: 'rule' });
});

test('a taught whole word stays one when it is drawn out, and is no guess', () => {
  const sequence = `lessons:\n  - name: "1"\n    spellings: [b as in bat]\n    high-frequency words: [no]\n`;
  const { pages, findings } = reviewed('---\nlesson: "1"\n---\nNooooo!\n', sequence, packagePhonics);
  expect(pages[0]?.reviewed.words[0]?.kind).toBe('high-frequency');
  expect(findings.filter(({ rule }) => rule === 'guessed-reading')).toEqual([]);
});
