import { readFileSync } from 'node:fs';
import { syllable } from 'syllable';
import { describe, expect, it } from 'vitest';
import { isVowel } from '../../server/src/phonics/phoneme.ts';
import { phonics } from '../support/reads.ts';
import { frequentWords, lexicon } from './lexicon-words.ts';

describe('coverage of English', () => {
  it('gives every one of the 2,000 most frequent words readings that cover all its letters', () => {
    for (const word of frequentWords(2000)) {
      const readings = phonics.readingsOf(word);
      expect(readings.length, word).toBeGreaterThan(0);
      for (const { parts } of readings) {
        const letters = parts.flatMap(({ spans }) =>
          spans.flatMap(([start, end]) => Array.from({ length: end - start }, (_, index) => start + index)),
        );
        expect(
          [...letters].sort((left, right) => left - right),
          word,
        ).toEqual([...word].map((_, index) => index));
      }
    }
  });

  it('aligns 99.9 % of the 10,000 most frequent words and 99 % of all entries; the rest is listed', () => {
    const failures = readFileSync(new URL('../../server/generated/not-aligned.txt', import.meta.url), 'utf8')
      .trim()
      .split('\n');
    const failedWords = new Set(failures.map((line) => line.split('\t')[0] ?? ''));
    const readings = [...lexicon.entries()].reduce((sum, entry) => sum + entry.readings.length, 0);
    expect(readings / (readings + failures.length)).toBeGreaterThan(0.99);
    const frequent = frequentWords(10_000);
    // A word with one of its pronunciations not aligned counts as failed.
    expect(frequent.filter((word) => failedWords.has(word)).length / frequent.length).toBeLessThan(0.001);
  });
});

describe('syllables of the 5,000 most frequent words', () => {
  const words = frequentWords(5000);
  const counted = words.map((word) => {
    const [reading] = phonics.readingsOf(word);
    return {
      word,
      ours: reading?.syllables.length ?? 0,
      vowels: reading?.parts.flatMap(({ sounds }) => sounds).filter(isVowel).length ?? 0,
      whole: reading?.parts.length === 1,
    };
  });

  it('are as many as the dictionary has vowels, fire and hour as one', () => {
    const other = counted
      .filter(({ ours, vowels, whole }) => !whole && ours !== Math.max(1, vowels))
      .map(({ word }) => word);
    for (const word of other) {
      const merged = phonics
        .readingsOf(word)[0]
        ?.parts.some(
          ({ sounds }) => sounds.length > 1 && sounds.at(-1) === 'ER' && isVowel(sounds[0] ?? 'B'),
        );
      expect(merged, word).toBe(true);
    }
  });

  it('agree with the npm package syllable but for words that were looked at', () => {
    const differing = counted
      .filter(({ word, ours }) => syllable(word) !== ours)
      .map(({ word, ours }) => `${word}\t${ours}\t${syllable(word)}`);
    expect(differing.length / words.length).toBeLessThan(0.05);
    // The table keeps the figures and, looked at one by one, who is right: here, package or both, with a reason.
    const kept = readFileSync(new URL('tables/syllables.tsv', import.meta.url), 'utf8')
      .trim()
      .split('\n')
      .slice(1)
      .map((line) => line.split('\t'));
    expect(differing).toEqual(kept.map((cells) => cells.slice(0, 3).join('\t')));
    for (const [word, , , right, reason] of kept) {
      expect(['here', 'package', 'both'], word).toContain(right);
      expect(reason, word).not.toBe('');
    }
  });
});
