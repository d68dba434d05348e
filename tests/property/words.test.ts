import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createWordFinder } from '../../server/src/words/find-words.ts';
import { packagePhonics } from '../support/package-phonics.ts';
import { sampleLesson, sampleTeaching } from '../support/sample-lessons.ts';
import { reviewedAtSampleLesson } from '../support/sample-review.ts';

const finder = createWordFinder(sampleTeaching, packagePhonics);
const lessons = sampleTeaching.sequence.lessons.map(({ name }) => name);
const listed = packagePhonics.words.all().map(({ word }) => word);

/** What `check` says of a word alone in a text: readable or not. */
function isReadable(word: string, lesson: string): boolean {
  const kind = reviewedAtSampleLesson(word === 'i' ? 'I' : word, lesson)[0]?.kind;
  return kind === 'decodable' || kind === 'high-frequency';
}

describe('the word finder', () => {
  it.each(['1', '7', '12', '17', '18', '21', '25', '31', '36'])(
    'finds at lesson %s what judging every word finds (a sample of the lexicon)',
    (lesson) => {
      const found = new Set(
        finder.find(sampleLesson(lesson), { includesRare: true }).words.map(({ word }) => word.toLowerCase()),
      );
      fc.assert(
        fc.property(fc.nat({ max: listed.length - 1 }), (at) => {
          const word = listed[at] ?? '';
          expect(found.has(word), word).toBe(isReadable(word, lesson));
          expect(finder.wordAt(sampleLesson(lesson), word) !== undefined, word).toBe(
            isReadable(word, lesson),
          );
        }),
        { numRuns: 1500 },
      );
    },
    30_000,
  );

  it.each(lessons)('finds among the new words of lesson %s every word that uses a new spelling', (lesson) => {
    const taught = sampleLesson(lesson);
    const wordsOf = (isNew: boolean): readonly string[] =>
      finder
        .find(taught, isNew ? { isNew } : {})
        .words.filter((found) => found.isNew)
        .map(({ word }) => word);
    expect(wordsOf(true)).toEqual(wordsOf(false));
  });

  it('offers nothing unfit at any lesson', () => {
    for (const { word } of finder.find(sampleLesson('36'), { includesRare: true }).words) {
      expect(packagePhonics.words.unfitFor(word), word).toBeUndefined();
    }
  });
});
