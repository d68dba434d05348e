import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildChain } from '../../server/src/chains/build-chain.ts';
import type { Chain, ChainWish } from '../../server/src/chains/chain.ts';
import { createWordFinder } from '../../server/src/words/find-words.ts';
import { stepTrouble } from '../support/chain-check.ts';
import { packagePhonics } from '../support/package-phonics.ts';
import { sampleLesson, sampleTeaching } from '../support/sample-lessons.ts';
import { reviewedAtSampleLesson } from '../support/sample-review.ts';

const finder = createWordFinder(sampleTeaching, packagePhonics);
const lessons = sampleTeaching.sequence.lessons.map(({ name }) => name);

function chainAt(lesson: string, wish: ChainWish): Chain {
  return buildChain(finder, sampleLesson(lesson), packagePhonics, wish);
}

function words(chain: Chain): readonly string[] {
  return chain.links.map(({ found }) => found.word);
}

describe('a chain at any lesson with any seed', () => {
  it.each(lessons)('is right in every step, lesson %s', (lesson) => {
    const taught = sampleLesson(lesson);
    for (const seed of [1, 2, 3]) {
      const chain = words(chainAt(lesson, { length: 12, seed }));
      expect(chain.length).toBeGreaterThan(5);
      expect(new Set(chain).size).toBe(chain.length);
      const troubles = chain
        .slice(1)
        .map((word, at) =>
          stepTrouble(chain[at] ?? '', word, (reading) => taught.judge(reading).missing.length === 0),
        );
      expect(troubles.filter((trouble) => trouble !== undefined)).toEqual([]);
      // Every word is readable as check says it.
      const kinds = reviewedAtSampleLesson(chain.join('. '), lesson).map(({ kind }) => kind);
      expect(new Set(kinds)).toEqual(new Set(['decodable']));
      expect(chain.filter((word) => packagePhonics.words.unfitFor(word) !== undefined)).toEqual([]);
    }
  });

  it('has the length and the start that were wanted, or says that it has not', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...lessons),
        fc.integer({ min: 2, max: 25 }),
        fc.nat({ max: 1000 }),
        fc.boolean(),
        (lesson, length, seed, includesForms) => {
          const { links, isComplete } = chainAt(lesson, { length, seed, includesForms });
          expect(isComplete).toBe(links.length === length);
          expect(links.length).toBeLessThanOrEqual(length);
          const start = links[0]?.found.word ?? '';
          const again = chainAt(lesson, { length, seed: seed + 1, includesForms, start });
          expect(again.links[0]?.found.word).toBe(start);
        },
      ),
      { numRuns: 25 },
    );
  });

  it('is the same for the same seed, and mostly another for another', () => {
    const chains = [1, 2, 3, 4, 5, 6].map((seed) => words(chainAt('14', { length: 8, seed })).join(' '));
    expect([1, 2, 3, 4, 5, 6].map((seed) => words(chainAt('14', { length: 8, seed })).join(' '))).toEqual(
      chains,
    );
    expect(new Set(chains).size).toBeGreaterThan(3);
  });
});
