import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readSequence } from '../../../server/src/sequence/read-sequence.ts';
import { teachingOf } from '../../../server/src/sequence/teaching.ts';
import type { Series } from '../../../server/src/series/series.ts';
import { sequenceOf, storyOf } from '../../primer-1881/series.ts';
import { figuresOf } from '../../support/independent-figures.ts';
import { packagePhonics } from '../../support/package-phonics.ts';
import { sampleTeaching } from '../../support/sample-lessons.ts';
import { seriesAlong } from '../../support/series.ts';

const samples = new URL('../../../samples/', import.meta.url);
const sampleStories = Object.fromEntries(
  readdirSync(samples)
    // The draft has digits and other things that the independent count cannot read.
    .filter((name) => /^\d.*\.md$/.test(name) && !name.includes('draft'))
    .map((name) => [name, readFileSync(new URL(name, samples), 'utf8')]),
);
const primer: readonly Parameters<typeof storyOf>[0][] = readFileSync(
  new URL('../../primer-1881/lessons.jsonl', import.meta.url),
  'utf8',
)
  .trim()
  .split('\n')
  .map((line) => JSON.parse(line));
const primerTeaching = teachingOf(
  readSequence(sequenceOf(primer, 'sounds and words', packagePhonics)),
  packagePhonics,
);
const primerStories = Object.fromEntries(
  primer.map((lesson) => [`${String(lesson.lesson).padStart(2, '0')}.md`, storyOf(lesson, primer)]),
);

const bothSeries: readonly (readonly [string, Readonly<Record<string, string>>, Series])[] = [
  ['the sample series', sampleStories, seriesAlong(sampleTeaching, sampleStories, packagePhonics)],
  ['the primer of 1881', primerStories, seriesAlong(primerTeaching, primerStories, packagePhonics)],
];

describe.each(bothSeries)('figures of %s, counted again by other means', (_, texts, series) => {
  const again = series.stories.map(({ story }) => figuresOf(texts[story.path] ?? ''));

  it('has all stories in the order of the lessons', () => {
    const indexes = series.stories.map(({ story }) => story.lesson.index);
    expect(indexes).toEqual([...indexes].sort((left, right) => left - right));
    expect(series.stories).toHaveLength(Object.keys(texts).length);
  });

  it('counts running words and sentences', () => {
    expect(
      series.stories.map(({ story }) => [
        story.path,
        story.counts.words,
        story.sentences.count,
        story.sentences.longest,
      ]),
    ).toEqual(
      series.stories.map(({ story }, index) => [
        story.path,
        again[index]?.words,
        again[index]?.sentences,
        again[index]?.longest,
      ]),
    );
    for (const { story } of series.stories) {
      expect(story.sentences.mean).toBeCloseTo(story.counts.words / story.sentences.count, 10);
    }
  });

  it('counts uses and new words', () => {
    const seen = new Set<string>();
    const total = new Map<string, number>();
    series.stories.forEach(({ story, newWords, wordsSoFar }, index) => {
      const uses = again[index]?.uses ?? new Map<string, number>();
      expect(Object.fromEntries(story.words.map(({ word, count }) => [word, count]))).toEqual(
        Object.fromEntries(uses),
      );
      expect(newWords.map(({ word }) => word)).toEqual([...uses.keys()].filter((word) => !seen.has(word)));
      for (const [word, count] of uses) {
        seen.add(word);
        total.set(word, (total.get(word) ?? 0) + count);
      }
      expect(wordsSoFar).toBe(seen.size);
    });
    expect(Object.fromEntries(series.words.map(({ word, count }) => [word, count]))).toEqual(
      Object.fromEntries(total),
    );
  });

  it('counts uses of every high-frequency word in every story from its lesson on', () => {
    const counted = series.highFrequencyWords.map(({ thing, uses }) => [thing.word, ...uses]);
    const expected = series.highFrequencyWords.map(({ thing }) => [
      thing.word,
      ...series.stories.map(({ story }, index) =>
        story.lesson.index < thing.lesson.index ? 0 : (again[index]?.uses.get(thing.word.toLowerCase()) ?? 0),
      ),
    ]);
    expect(counted).toEqual(expected);
    expect(counted.length).toBeGreaterThan(20);
  });

  it('counts a word for a spelling only where it is decodable and its parts hold the letters', () => {
    let checked = 0;
    for (const { thing, uses } of series.spellings) {
      // Spellings that no ending and no other sound of the same letters can blur.
      if (!/^(sh|ck|tch|ng|igh|qu|wh|kn|wr)$/.test(thing.line.letters)) continue;
      checked++;
      const expected = series.stories.map(({ story }) =>
        story.words
          .filter(
            ({ kind, reading }) =>
              kind === 'decodable' && reading?.parts.some(({ letters }) => letters === thing.line.letters),
          )
          .reduce((sum, { count }) => sum + count, 0),
      );
      expect([thing.line.letters, ...uses]).toEqual([thing.line.letters, ...expected]);
    }
    if (series.sequence === sampleTeaching.sequence) expect(checked).toBeGreaterThan(5);
  });
});
