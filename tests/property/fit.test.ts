import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitText } from '../../server/src/fit/fit-text.ts';
import { reviewStory } from '../../server/src/review/review-story.ts';
import { readStory } from '../../server/src/story/read-story.ts';
import { packagePhonics } from '../support/package-phonics.ts';
import { sampleLesson, sampleTeaching } from '../support/sample-lessons.ts';

const samples = new URL('../../samples/', import.meta.url);
const stories = readdirSync(samples).filter((name) => /^\d.*\.md$/.test(name));

/** Fit and check must say the same of a text at a lesson. */
function agrees(text: string, lesson: string): void {
  const story = readStory(text);
  const fitted = fitText(story, sampleTeaching, packagePhonics).lessons.find(
    (each) => each.lesson.name === lesson,
  );
  const { counts, readable, target, findings } = reviewStory({
    story,
    taught: sampleLesson(lesson),
    phonics: packagePhonics,
  });
  const fallsShort = findings.some(({ rule }) => rule === 'under-target');
  expect(fitted).toMatchObject({ counts, readable, target, reachesTarget: !fallsShort });
}

const piece = fc.oneof(
  fc.constantFrom(
    ...'The the cat night read Read lead wind wound close jumped hopped Kim kids 12 Mr. ship which cake a I zibble'.split(
      ' ',
    ),
  ),
  fc.constantFrom('. ', ', ', '! ', ' ', '\n\n', '\n\n---\n\n', '\n# ', '\n> ', '"', '-', '’s ', '*'),
  fc.string({ unit: 'binary', maxLength: 4 }),
);
const head = fc.constantFrom(
  '',
  '---\nlesson: "3"\nnames: [Kim]\nstory words:\n  night: when it is dark\n---\n',
);
const text = fc
  .tuple(head, fc.array(piece, { maxLength: 80 }))
  .map(([front, pieces]) => front + pieces.join(' '));

describe('fit says of every lesson what check says', () => {
  it.each(stories)('%s', (name) => {
    const source = readFileSync(new URL(name, samples), 'utf8');
    for (const { name: lesson } of sampleTeaching.sequence.lessons) agrees(source, lesson);
  });

  it('of any text', () => {
    fc.assert(
      fc.property(text, fc.constantFrom(...sampleTeaching.sequence.lessons), (given, { name }) =>
        agrees(given, name),
      ),
      { numRuns: 60 },
    );
  });
});

describe('what holds a text back', () => {
  it('accounts for every word that is not readable, and no word twice', () => {
    fc.assert(
      fc.property(text, fc.constantFrom(...sampleTeaching.sequence.lessons), (given, lesson) => {
        const { counts } = reviewStory({
          story: readStory(given),
          taught: sampleLesson(lesson.name),
          phonics: packagePhonics,
        });
        const held = fitText(readStory(given), sampleTeaching, packagePhonics).heldBackAt(lesson);
        const unread = held.words.reduce((sum, { count }) => sum + count, 0);
        expect(unread).toBe(counts.words - counts.decodable - counts['high-frequency']);
        for (const { alone, words } of held.things) {
          expect(alone).toBeLessThanOrEqual(words.reduce((sum, { count }) => sum + count, 0));
        }
      }),
      { numRuns: 40 },
    );
  });
});
