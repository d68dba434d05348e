import fc from 'fast-check';
import { expect, test } from 'vitest';
import { endings } from '../../server/src/phonics/reading.ts';
import { readSequence } from '../../server/src/sequence/read-sequence.ts';
import { blends, type Sequence } from '../../server/src/sequence/sequence.ts';
import { csvOf, plainCell } from '../../server/src/series/report/csv.ts';
import { guessColumns } from '../../server/src/start/column-uses.ts';
import { importSequence } from '../../server/src/start/import-sequence.ts';
import { readCsv } from '../../server/src/start/read-csv.ts';
import { sequenceAsCsv } from '../../server/src/start/sequence-csv.ts';
import type { SequencePlan } from '../../server/src/start/sequence-plan.ts';
import { sequenceText } from '../../server/src/start/write-sequence.ts';

const noKeyWords = { commonSpellings: () => [] };

/** The text of a sequence file made of a table, and whether anything in it was not understood. */
function imported(csv: string) {
  const table = readCsv(csv);
  const uses = guessColumns(table.rows[0]?.cells.map(({ text }) => text) ?? []);
  const { plan, problems } = importSequence(table, uses, noKeyWords);
  return { text: sequenceText(plan), problems };
}

/** All that a sequence says, without places. */
function said({ title, targets, lessons, accent, mentions, limits, pronunciations }: Sequence) {
  const values = <Item>(items: readonly { readonly value: Item }[]) => items.map(({ value }) => value);
  return {
    title,
    targets,
    accent,
    mentions: [...mentions].sort(),
    limits,
    pronunciations: pronunciations.map(({ word, graphemes }) => [word.value, graphemes.value]),
    lessons: lessons.map((lesson) => ({
      name: lesson.name,
      title: lesson.title,
      spellings: values(lesson.spellings),
      words: values(lesson.highFrequencyWords),
      endings: values(lesson.endings),
      blends: values(lesson.blends),
      syllables: lesson.syllables?.value,
      punctuation: values(lesson.punctuation),
      targets: lesson.targets,
    })),
  };
}

const line = fc
  .string({
    unit: fc.oneof(
      fc.constantFrom(...'=+-@\'";,\t\n: #[]{}&*!|>%`', 'é', '\u2028'),
      fc.string({ minLength: 1, maxLength: 1 }),
    ),
    maxLength: 12,
  })
  .map((text) => text.trim())
  .filter((text) => text !== '' && text.toLowerCase() !== 'none');
const word = fc.stringMatching(/^[a-z]{1,6}$/);
const target = fc.record(
  { sentence: fc.integer({ min: 1, max: 30 }), 'story words': fc.integer({ min: 0, max: 9 }) },
  { requiredKeys: [] },
);
const lesson = fc.record(
  {
    title: line,
    spellings: fc.array(
      fc
        .tuple(fc.stringMatching(/^[a-z]{1,3}(?:_e)?$/), word)
        .map(([letters, key]) => `${letters} as in ${key}`),
      { maxLength: 9 },
    ),
    highFrequencyWords: fc.array(word, { maxLength: 4 }),
    endings: fc.array(fc.constantFrom(...endings), { maxLength: 3 }),
    blends: fc.array(fc.constantFrom(...blends), { maxLength: 2 }),
    syllables: fc.integer({ min: 1, max: 9 }),
    punctuation: fc.array(fc.constantFrom('?', '!', ',', '"', ';', ':', '-', '—', '…', "'", '='), {
      maxLength: 3,
    }),
    targets: target,
  },
  { requiredKeys: [] },
);
const plan: fc.Arbitrary<SequencePlan> = fc.record({
  title: line,
  targets: target,
  settings: fc.constantFrom<NonNullable<SequencePlan['settings']>>(
    {},
    { 'cot and caught': 'apart' },
    { series: { 'again within': '7' }, pronunciations: { Plim: 'p-l-i-m' } },
  ),
  lessons: fc
    .uniqueArray(line, { minLength: 1, maxLength: 6 })
    .chain((names) => fc.tuple(...names.map((name) => lesson.map((rest) => ({ ...rest, name }))))),
});

test('exported and imported again, a sequence says the same', () => {
  fc.assert(
    fc.property(plan, (each) => {
      const sequence = readSequence(sequenceText(each));
      const again = imported(sequenceAsCsv(sequence));
      expect(again.problems).toEqual([]);
      expect(said(readSequence(again.text))).toEqual(said(sequence));
    }),
    { numRuns: 150 },
  );
});

test('what a sequence is planned to say, its file says', () => {
  fc.assert(
    fc.property(plan, (each) => {
      const { lessons, title } = readSequence(sequenceText(each));
      expect(title).toBe(each.title);
      expect(lessons.map(({ name }) => name)).toEqual(each.lessons.map(({ name }) => name));
      expect(lessons.map((read) => read.title)).toEqual(each.lessons.map((planned) => planned.title));
      expect(lessons.map(({ punctuation }) => punctuation.length)).toEqual(
        each.lessons.map(({ punctuation }) => punctuation?.length ?? 0),
      );
    }),
    { numRuns: 150 },
  );
});

test('a cell is read as it was, and no spreadsheet takes it for a formula', () => {
  fc.assert(
    fc.property(fc.string(), (text) => {
      const cell =
        readCsv(
          csvOf([
            ['lesson', 'title'],
            ['x', text],
          ]),
        ).rows[1]?.cells[1]?.text ?? '';
      expect(plainCell(cell)).toBe(text);
      expect(cell).not.toMatch(/^\s*[=+\-@]/);
    }),
  );
});

test('any text at all is read, and every word of it stands in the file', () => {
  const scrap = fc.constantFrom(
    'Lesson',
    'Spellings',
    'Notes',
    ',',
    ';',
    '\t',
    '\n',
    '\r\n',
    '"',
    'sh',
    'as in',
    'ship',
    '7',
    '?',
    ' ',
    "'=1",
  );
  fc.assert(
    fc.property(
      fc.array(scrap, { maxLength: 40 }).map((bits) => bits.join('')),
      (csv) => {
        const { text } = imported(csv);
        const rows = readCsv(csv).rows.slice(1);
        for (const found of rows.flatMap(({ cells }) =>
          cells.flatMap((cell) => cell.text.match(/[a-z0-9]+/gi) ?? []),
        ))
          expect(text.toLowerCase()).toContain(found.toLowerCase());
        for (const { span } of readCsv(csv).problems) expect(span.end).toBeLessThanOrEqual(csv.length);
      },
    ),
  );
});
