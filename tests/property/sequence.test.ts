import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { endings } from '../../server/src/phonics/reading.ts';
import { readSequence } from '../../server/src/sequence/read-sequence.ts';
import { blends } from '../../server/src/sequence/sequence.ts';
import { teachingOf } from '../../server/src/sequence/teaching.ts';
import { beginnersWords, handPhonics } from '../support/hand-phonics.ts';

const phonics = handPhonics(beginnersWords);
const words = [
  ...new Set(
    beginnersWords
      .trim()
      .split('\n')
      .map((line) => line.trim().split(/\s+/)[0] ?? ''),
  ),
];
const readings = words.flatMap((word) => phonics.readingsOf(word));

/** Every spelling a key word of the table can show: each stretch of up to three of its graphemes. */
const spellings = [
  ...new Set(
    words.flatMap((word) =>
      phonics
        .readingsOf(word)
        .flatMap(({ parts }) =>
          parts.flatMap((_, from) =>
            [1, 2, 3].map((length) => parts.slice(from, from + length).map(({ letters }) => letters)),
          ),
        )
        .filter((letters) => letters.length === 1 || letters.every((grapheme) => !grapheme.includes('_')))
        .map((letters) => `${letters.join('')} as in ${word}`),
    ),
  ),
];

const lesson = fc.record(
  {
    spellings: fc.array(fc.constantFrom(...spellings), { maxLength: 12 }),
    endings: fc.array(fc.constantFrom(...endings), { maxLength: 3 }),
    blends: fc.array(fc.constantFrom(...blends), { maxLength: 2 }),
    syllables: fc.integer({ min: 1, max: 3 }),
  },
  { requiredKeys: ['spellings'] },
);

/** Bits of sequence files, whole and broken. */
const scrap = fc.constantFrom(
  'lessons:',
  '\n',
  '\r\n',
  '  - name: "1"',
  '    title: A',
  '    spellings: [',
  'm as in mud',
  ']',
  ', ',
  "'",
  '"',
  '\t',
  '    targets: { sentence: 8 }',
  '{',
  '}',
  ': ',
  '- ',
  '&a ',
  '*a',
  '---\n',
  '# note',
  '    endings: [s]',
  '!',
  '|',
  '>',
  '? ',
  '%',
  '\ufeff',
  '\ud800',
  'é',
  '😀',
  '  ',
  'title: x',
  'pronunciations:',
  '<<: *a',
  '!!set ',
  '    syllables: 2',
);
const anyText = fc.oneof(
  fc.string({ unit: 'binary' }),
  fc.array(scrap, { maxLength: 40 }).map((scraps) => scraps.join('')),
);

describe('any text', () => {
  it('gives a sequence whose spans lie in the text, and the same one again', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const sequence = readSequence(text);
        const teaching = teachingOf(sequence, phonics);
        const spans = [
          ...teaching.problems.map(({ span }) => span),
          ...sequence.pronunciations.flatMap(({ word, graphemes }) => [word.span, graphemes.span]),
          ...sequence.lessons.flatMap((read) => [
            read.span,
            read.nameSpan,
            ...[
              ...read.spellings,
              ...read.highFrequencyWords,
              ...read.endings,
              ...read.blends,
              ...read.punctuation,
            ].map(({ span }) => span),
          ]),
        ];
        for (const { start, end } of spans) {
          expect(0 <= start && start <= end && end <= text.length).toBe(true);
        }
        expect(sequence.lessons.map(({ index }) => index)).toEqual(sequence.lessons.map((_, index) => index));
        expect(readSequence(text)).toEqual(sequence);
        for (const read of sequence.lessons) {
          expect(teaching.taughtBy(read).judge(readings[0] ?? expect.fail())).toBeDefined();
        }
      }),
      { numRuns: 150 },
    );
  });

  it('without lessons always says so', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const { lessons, problems } = readSequence(text);
        expect(lessons.length > 0 || problems.length > 0).toBe(true);
      }),
      { numRuns: 150 },
    );
  });
});

describe('what is taught', () => {
  const sequenceOf = (lessons: readonly object[]) =>
    teachingOf(
      readSequence(
        JSON.stringify({ lessons: lessons.map((given, index) => ({ name: `${index}`, ...given })) }),
      ),
      phonics,
    );

  it('stays taught, and is promised for the right lesson', () => {
    fc.assert(
      fc.property(fc.array(lesson, { minLength: 1, maxLength: 6 }), (lessons) => {
        const teaching = sequenceOf(lessons);
        for (const reading of readings) {
          const verdicts = teaching.sequence.lessons.map((each) => teaching.taughtBy(each).judge(reading));
          const isDecodable = verdicts.map(({ missing }) => missing.length === 0);
          expect(isDecodable).toEqual([...isDecodable].sort());
          verdicts.forEach(({ missing }, now) => {
            for (const lack of missing) {
              expect(lack.lesson?.index ?? Number.POSITIVE_INFINITY).toBeGreaterThan(now);
            }
            // The lessons that a verdict names are together the first at which the word can be read.
            const promised = Math.max(
              ...missing.map((lack) => lack.lesson?.index ?? Number.POSITIVE_INFINITY),
            );
            if (missing.length > 0) {
              const first = isDecodable.indexOf(true);
              expect(first === -1 ? Number.POSITIVE_INFINITY : first).toBe(promised);
            }
          });
        }
      }),
      { numRuns: 150 },
    );
  });

  it('covers a word with what is taught and with nothing else', () => {
    fc.assert(
      fc.property(fc.array(lesson, { minLength: 1, maxLength: 4 }), (lessons) => {
        const teaching = sequenceOf(lessons);
        for (const each of teaching.sequence.lessons) {
          const taught = teaching.taughtBy(each);
          for (const reading of readings) {
            const { uses, missing } = taught.judge(reading);
            expect(uses.every((spelling) => spelling.lesson.index <= each.index)).toBe(true);
            if (missing.length === 0 && reading.inflection === undefined) {
              expect(uses.flatMap(({ pattern }) => pattern.map(({ letters }) => letters))).toEqual(
                reading.parts.map(({ letters }) => letters),
              );
            }
          }
        }
      }),
      { numRuns: 40 },
    );
  });
});
