import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { reportOf, reviewsOf, runningWords } from '../primer-1881/report.ts';
import { lessonsOf, storyOf } from '../primer-1881/series.ts';
import { phonics } from '../support/reads.ts';

// The Eclectic Primer, revised edition, 1881 (public domain): a whole beginning reader that nobody here wrote.
const data = readFileSync(new URL('../primer-1881/lessons.jsonl', import.meta.url), 'utf8');
const lessons = lessonsOf(data);

describe('a whole primer of 1881', () => {
  it('has the readable share of the kept report, lesson by lesson', () => {
    expect(reportOf(data, phonics)).toBe(
      readFileSync(new URL('../primer-1881/report.md', import.meta.url), 'utf8'),
    );
  });

  it.each(['sounds', 'sounds and words'] as const)(
    'gives every word of every lesson a verdict, by %s',
    (view) => {
      const reviews = reviewsOf(lessons, view, phonics);
      expect(reviews).toHaveLength(52);
      for (const [index, review] of reviews.entries()) {
        const words = runningWords(review);
        expect(words.map(({ word }) => word.text)).toEqual(wordsIn(lessons[index]?.text ?? []));
        for (const { word, reading } of words) expect(reading, word.text).toBeDefined();
        // The figures, counted again from the words' kinds.
        const readable = words.filter(({ kind }) => kind === 'decodable' || kind === 'high-frequency').length;
        expect(review.readable).toBe(readable / words.length);
        expect(review.counts.words).toBe(words.length);
      }
    },
  );

  it('can read every word it has listed', () => {
    const listed = new Set<string>();
    for (const [index, review] of reviewsOf(lessons, 'sounds and words', phonics).entries()) {
      for (const word of lessons[index]?.new_words ?? []) listed.add(word.toLowerCase());
      for (const { word, kind } of runningWords(review)) {
        if (listed.has(word.text.toLowerCase()))
          expect(['decodable', 'high-frequency'], word.text).toContain(kind);
      }
    }
  });

  it('names in its stories what was listed as a name', () => {
    expect(storyOf(lessons[5] ?? lessonsOf(data)[0] ?? fail(), lessons)).toContain('names: [Ann, Nat, Rab]');
  });
});

/** Words by a rule of this test's own: letters, with apostrophes inside. */
function wordsIn(lines: readonly string[]): readonly string[] {
  return lines.flatMap((line) => line.match(/[A-Za-z]+(?:['’][A-Za-z]+)*/g) ?? []);
}

function fail(): never {
  throw new Error('The primer has no lessons.');
}
