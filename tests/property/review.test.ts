import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Counts, type Review, wordKinds } from '../../server/src/review/review.ts';
import { reviewStory } from '../../server/src/review/review-story.ts';
import { readStory } from '../../server/src/story/read-story.ts';
import type { Story } from '../../server/src/story/story.ts';
import type { Span } from '../../server/src/text/span.ts';
import { pondPhonics } from '../support/pond-phonics.ts';
import { taughtAt } from '../support/reviewed.ts';

const sequence = `title: At the pond
targets: { sentence: 3, page: 6, practice: 2, repeats: 1, story words: 1 }
lessons:
  - name: "1"
    spellings: [m as in map, p as in map, a as in map, t as in top]
    high-frequency words: [the]
    punctuation: ["."]
  - name: "2"
    spellings: [n as in sun, e as in ten, o as in top]
    high-frequency words: [sat]
    syllables: 2
    endings: [s]
  - name: "3"
    spellings: [igh as in light]
`;
const taught = taughtAt(sequence, '2', pondPhonics);

/** Pieces that stories are made of, whole and broken, with what is hard about text. */
const piece = fc.oneof(
  {
    weight: 6,
    arbitrary: fc.constantFrom(...'The the map net night pond sat rabbit zat jumps Kim 12 Mr.'.split(' ')),
  },
  {
    weight: 3,
    arbitrary: fc.constantFrom('.', '!', '? ', ' ', ' ', '\n', '\n\n', '\r\n', '\r', '"', '’', '-'),
  },
  {
    weight: 2,
    arbitrary: fc.constantFrom('\n\n---\n\n', '\n# ', '\n> ', '![', '](', ')', '*', '`', '<!--', '-->'),
  },
  {
    weight: 1,
    arbitrary: fc.constantFrom(
      '\ud83d',
      '\udc1f',
      '🐟',
      'e\u0301',
      '\u0000',
      '\u200b',
      'ß',
      'İ',
      '&amp;',
      '\\',
      '{{',
      ': ',
    ),
  },
  { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 5 }) },
);
const frontMatter = fc.constantFrom(
  '',
  '---\n---\n',
  '---\nlesson: "2"\n---\n',
  '---\nlesson: "2"\nnames: [Kim, Night]\nstory words:\n  pond: a small lake\n  night:\n---\n',
  '---\nlesson: "2"\nnames: [Kim\npronunciations:\n  zat: z-a-t\n  map: m-ap\n---\r\n',
  '\ufeff---\nlesson: 2\nstory words: [pond]\n---\n',
);
const text = fc
  .tuple(frontMatter, fc.array(piece, { maxLength: 60 }))
  .map(([head, pieces]) => head + pieces.join(''));

function review(story: Story, previous?: Review): Review {
  return reviewStory({ story, taught, phonics: pondPhonics }, previous);
}

/** A review without the objects that only name where it comes from. */
function plain({ taught: _, ...rest }: Review): unknown {
  return rest;
}

function isInside({ start, end }: Span, whole: string): boolean {
  return Number.isInteger(start) && 0 <= start && start <= end && end <= whole.length;
}

describe('the review of any text', () => {
  it('has every span inside the text', () => {
    fc.assert(
      fc.property(text, (given) => {
        const { findings, pages, title, newWordUses, newSpellingUses } = review(readStory(given));
        const spans = [
          ...findings.map(({ span }) => span),
          ...title.map(({ word }) => word.span),
          ...[...newWordUses, ...newSpellingUses].flatMap((use) => use.spans),
        ];
        expect(spans.filter((span) => !isInside(span, given))).toEqual([]);
        for (const { placed, reviewed } of pages) {
          const inPage = [
            ...reviewed.words.map(({ word }) => word.span),
            ...reviewed.findings.map(({ span }) => span),
          ];
          expect(inPage.filter((span) => !isInside(span, placed.page.source))).toEqual([]);
        }
      }),
      { numRuns: 400 },
    );
  });

  it('is the same for the same text', () => {
    fc.assert(
      fc.property(text, (given) => {
        expect(plain(review(readStory(given)))).toEqual(plain(review(readStory(given))));
      }),
      { numRuns: 100 },
    );
  });

  it('has a kind for every word, and counts that add up', () => {
    fc.assert(
      fc.property(text, (given) => {
        const { counts, pages, readable, decodable, findings, passes } = review(readStory(given));
        const words = pages.flatMap(({ reviewed }) => reviewed.words);
        expect(counts.words).toBe(words.length);
        for (const kind of wordKinds) {
          expect(counts[kind]).toBe(words.filter((word) => word.kind === kind).length);
        }
        expect(sum(counts)).toBe(counts.words);
        expect(readable).toBeGreaterThanOrEqual(decodable);
        expect(readable).toBeLessThanOrEqual(1);
        expect(findings.some(({ rule }) => rule === 'under-target')).toBe(
          readable < taught.targets.readable / 100,
        );
        if (passes) expect(readable).toBeGreaterThanOrEqual(taught.targets.readable / 100);
      }),
      { numRuns: 200 },
    );
  });

  it('finds one thing at every word that is not taught, and only there', () => {
    fc.assert(
      fc.property(text, (given) => {
        const { pages } = review(readStory(given));
        for (const { reviewed } of pages) {
          const marked = reviewed.findings.filter(
            ({ rule }) => rule === 'untaught-spelling' || rule === 'untaught-form',
          );
          const notTaught = reviewed.words.filter(({ kind }) => kind === 'not-taught');
          expect(marked.map(({ span }) => span)).toEqual(notTaught.map(({ word }) => word.span));
        }
      }),
      { numRuns: 200 },
    );
  });

  it('has its findings in the order of the text', () => {
    fc.assert(
      fc.property(text, (given) => {
        const starts = review(readStory(given)).findings.map(({ span }) => span.start);
        expect(starts).toEqual([...starts].sort((left, right) => left - right));
      }),
      { numRuns: 100 },
    );
  });

  it('is the same after any edits as from scratch', () => {
    const edit = fc.record({
      at: fc.double({ min: 0, max: 1, noNaN: true }),
      remove: fc.nat({ max: 30 }),
      insert: fc.array(piece, { maxLength: 4 }).map((pieces) => pieces.join('')),
    });
    fc.assert(
      fc.property(text, fc.array(edit, { minLength: 1, maxLength: 5 }), (given, edits) => {
        let current = given;
        let story = readStory(current);
        let latest = review(story);
        for (const { at, remove, insert } of edits) {
          const place = Math.floor(at * current.length);
          current = current.slice(0, place) + insert + current.slice(place + remove);
          story = readStory(current, story);
          latest = review(story, latest);
          expect(plain(latest)).toEqual(plain(review(readStory(current))));
        }
      }),
      { numRuns: 150 },
    );
  });
});

function sum(counts: Counts): number {
  return wordKinds.reduce((total, kind) => total + counts[kind], 0);
}
