import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { copiedLessons, lessonsOf, misread } from '../primer-1881/lessons.ts';
import { reportOf } from '../primer-1881/report.ts';
import { reviewsOf, runningWords } from '../primer-1881/reviews.ts';
import { sequenceOf, seriesOf, storyOf } from '../primer-1881/series.ts';
import { terminal } from '../support/memory-host.ts';
import { phonics } from '../support/reads.ts';

// The Eclectic Primer, revised edition, 1881 (public domain): a whole beginning reader that nobody here wrote.
const kept = (name: string): string =>
  readFileSync(new URL(`../primer-1881/${name}`, import.meta.url), 'utf8');
const data = kept('lessons.jsonl');
const lessons = lessonsOf(data);
const views = ['sounds', 'sounds and words'] as const;

describe('a whole primer of 1881', () => {
  it('has the readable share of the kept report, lesson by lesson', () => {
    expect(reportOf(data, phonics)).toBe(kept('report.md'));
  });

  it('makes the kept sequence of its own teaching order', () => {
    expect(sequenceOf(lessons, 'sounds and words', phonics)).toBe(kept('sequence.yaml'));
  });

  it.each(views)('gives every word of every lesson a verdict, by %s', (view) => {
    const reviews = reviewsOf(lessons, view, phonics);
    expect(reviews).toHaveLength(52);
    for (const [index, review] of reviews.entries()) {
      const words = runningWords(review);
      expect(words.map(({ word }) => word.text)).toEqual(wordsIn(lessons[index]?.text ?? []));
      for (const { word, kind, reading, missing } of words) {
        expect(reading, word.text).toBeDefined();
        expect(missing.length > 0, word.text).toBe(kind === 'not-taught');
      }
      expect(review.readable).toBe(readableOf(words) / words.length);
      expect(review.counts.words).toBe(words.length);
    }
  });

  it.each(views)('comes through the command line with the same figures, by %s', (view) => {
    const check = terminal(Object.fromEntries(seriesOf(lessons, view, phonics)), phonics);
    const { exitCode, output, errors } = check('check', '--format', 'json', '.');
    expect({ exitCode, errors }).toEqual({ exitCode: 1, errors: '' });
    const { stories } = JSON.parse(output) as { stories: readonly CheckedLesson[] };
    expect(stories.map(({ lesson }) => lesson)).toEqual(lessons.map(({ lesson }) => String(lesson)));
    const reviews = reviewsOf(lessons, view, phonics);
    for (const [index, story] of stories.entries()) {
      expect(story.words.map(({ text }) => text)).toEqual(wordsIn(lessons[index]?.text ?? []));
      expect(story.counts.words).toBe(story.words.length);
      expect(story.readable).toBe(readableOf(story.words) / story.words.length);
      expect(story.readable).toBe(reviews[index]?.readable);
    }
  });

  it('can read every word it has listed, and by its sounds never more than with its words', () => {
    const bySounds = reviewsOf(lessons, 'sounds', phonics);
    const listed = new Set<string>();
    for (const [index, review] of reviewsOf(lessons, 'sounds and words', phonics).entries()) {
      for (const word of lessons[index]?.new_words ?? []) listed.add(word.toLowerCase());
      for (const { word, kind } of runningWords(review)) {
        if (listed.has(word.text.toLowerCase())) expect(readableKinds, word.text).toContain(kind);
      }
      expect(bySounds[index]?.readable).toBeLessThanOrEqual(review.readable);
    }
  });

  it('names in its stories what was listed as a name', () => {
    const [lesson = fail()] = lessons.filter(({ lesson }) => lesson === 6);
    expect(storyOf(lesson, lessons)).toContain('names: [Ann, Nat, Rab]');
  });
});

describe('what the copy of the primer has misread', () => {
  it.each(misread)(
    'lesson $lesson has $meant where $copied was copied',
    ({ lesson, list, copied, meant }) => {
      const [found = fail()] = copiedLessons(data).filter((each) => each.lesson === lesson);
      expect(found[list]).toContain(copied);
      expect(found[list]).not.toContain(meant);
      const text = wordsIn(found.text).map((word) => word.toLowerCase());
      const holds = (letters: string): boolean =>
        list === 'new_words'
          ? text.includes(letters)
          : found.new_words.some((word) => word.includes(letters));
      expect({ copied: holds(copied), meant: holds(meant) }).toEqual({ copied: false, meant: true });
    },
  );
});

/** What these tests read of a story in `check --format json`. */
interface CheckedLesson {
  readonly lesson: string;
  readonly counts: { readonly words: number };
  readonly readable: number;
  readonly words: readonly { readonly text: string; readonly kind: string }[];
}

const readableKinds: readonly string[] = ['decodable', 'high-frequency'];

/** The readable words, counted again from their kinds. */
function readableOf(words: readonly { readonly kind: string }[]): number {
  return words.filter(({ kind }) => readableKinds.includes(kind)).length;
}

/** Words by a rule of this test's own: letters, with apostrophes inside. */
function wordsIn(lines: readonly string[]): readonly string[] {
  return lines.flatMap((line) => line.match(/[A-Za-z]+(?:['’][A-Za-z]+)*/g) ?? []);
}

function fail(): never {
  throw new Error('The primer has no such lesson.');
}
