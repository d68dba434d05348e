import { describe, expect, test } from 'vitest';
import { mostRows } from '../../../client/src/gauge/lists-model.ts';
import { gaugeModel } from '../../../client/src/gauge/model.ts';
import type { Gauge } from '../../../server/src/editor/protocol.ts';
import { countsOfKinds, gaugeOfCounts, rangesOn } from '../../support/gauge.ts';

const modelOf = (changes: Partial<Gauge>, counts = countsOfKinds(100)) =>
  gaugeModel(gaugeOfCounts(counts, changes));

describe('readable words', () => {
  test.each([
    ['reached', countsOfKinds(80, 16, 4), '96.0 %', 'Target of 95 % reached'],
    [
      'one word short',
      countsOfKinds(80, 14, 6),
      '94.0 %',
      'Under the target of 95 %: 1 more readable word would reach it',
    ],
    [
      'ten words short',
      countsOfKinds(71, 14, 15),
      '85.0 %',
      'Under the target of 95 %: 10 more readable words would reach it',
    ],
    // 95 % of 21 words are 19.95: only 20 reach it.
    [
      'a target between two words',
      countsOfKinds(19, 0, 2),
      '90.4 %',
      'Under the target of 95 %: 1 more readable word would reach it',
    ],
    ['no words', countsOfKinds(0), '–', 'No words yet'],
  ])('%s', (_, counts, figure, verdict) => {
    expect(modelOf({}, counts).readable).toMatchObject({ figure, verdict });
  });

  test('the lengths of the bar are the shares of the kinds and fill it', () => {
    const { segments } = modelOf({}, countsOfKinds(70, 15, 5, 3, 7)).readable;
    expect(segments.map(({ kind, share }) => [kind, share])).toEqual([
      ['decodable', 0.7],
      ['high-frequency', 0.15],
      ['name', 0.05],
      ['story-word', 0.03],
      ['not-taught', 0.07],
    ]);
  });

  test('a story without words has an empty bar', () => {
    expect(modelOf({}, countsOfKinds(0)).readable.segments.every(({ share }) => share === 0)).toBe(true);
  });

  test.each([
    [0, ''],
    [1, '1 finding in Problems'],
    [9, '9 findings in Problems'],
  ])('%i findings', (findings, text) => {
    expect(modelOf({ findings }).readable).toMatchObject({ findings: text, hasFindings: findings > 0 });
  });

  test('the lesson is named with its title where it has one', () => {
    expect(modelOf({}).lesson).toBe('Lesson 12: long i');
    expect(modelOf({ lesson: { name: '3', sequenceUri: 'memory:/sequence.yaml' } }).lesson).toBe('Lesson 3');
  });
});

describe('words not taught yet', () => {
  test('each different word with its reason and its places', () => {
    const { summary, state, items } = modelOf({
      notTaught: [
        { word: 'cloud', why: 'ou as in out comes in lesson 27', ranges: rangesOn(9, 14) },
        { word: 'jumps', why: 'the ending s comes in lesson 13', ranges: rangesOn(11) },
      ],
    }).notTaught;
    expect([summary, state]).toEqual(['2 different words', 'short']);
    expect(items.map(({ label, figure, detail }) => [label, figure, detail])).toEqual([
      ['cloud', '2 times', 'ou as in out comes in lesson 27'],
      ['jumps', '', 'the ending s comes in lesson 13'],
    ]);
    expect(items[0]?.places).toEqual(rangesOn(9, 14));
  });

  test('none', () => {
    expect(modelOf({}).notTaught).toMatchObject({ state: 'met', items: [] });
  });

  test('a flood is cut short, and says so', () => {
    const notTaught = Array.from({ length: mostRows + 30 }, (_, n) => ({
      word: `w${n}`,
      why: '',
      ranges: rangesOn(n),
    }));
    const { items, more, summary } = modelOf({ notTaught }).notTaught;
    expect([items.length, more, summary]).toEqual([mostRows, 'and 30 more', '230 different words']);
  });
});

describe('new spellings', () => {
  const light = { letters: 'igh', keyWord: 'light', ranges: rangesOn(1, 2, 3) };
  const kite = { letters: 'i_e', keyWord: 'kite', ranges: rangesOn() };

  test.each<[string, Gauge['newSpellings'], number, string, string]>([
    ['enough practice', [light], 8, 'met', '8 words of practice, at least 8 asked'],
    ['too little practice', [light], 1, 'short', '1 word of practice, at least 8 asked'],
    [
      'one never used',
      [light, kite],
      9,
      'short',
      '9 words of practice, at least 8 asked; 1 spelling not used yet',
    ],
    ['a lesson without any', [], 0, 'none', 'This lesson teaches no new spelling.'],
  ])('%s', (_, newSpellings, words, state, summary) => {
    expect(modelOf({ newSpellings, practice: { words, atLeast: 8 } }).spellings).toMatchObject({
      state,
      summary,
    });
  });

  test('each with its uses', () => {
    const { items } = modelOf({ newSpellings: [light, kite] }).spellings;
    expect(items.map(({ label, figure, dots, state }) => [label, figure, dots, state])).toEqual([
      ['igh as in light', '3 words', { filled: 3, empty: 0 }, 'met'],
      ['i_e as in kite', 'not used yet', { filled: 0, empty: 1 }, 'short'],
    ]);
  });
});

describe('new high-frequency words', () => {
  test.each<[number, string, 'met' | 'short', { filled: number; empty: number }]>([
    [0, '0 of 3', 'short', { filled: 0, empty: 3 }],
    [1, '1 of 3', 'short', { filled: 1, empty: 2 }],
    [3, '3 of 3', 'met', { filled: 3, empty: 0 }],
    [14, '14 of 3', 'met', { filled: 10, empty: 0 }],
  ])('used %i times', (times, figure, state, dots) => {
    const ranges = rangesOn(...Array.from({ length: times }, (_, n) => n));
    const { items } = modelOf({
      newHighFrequencyWords: [{ word: 'said', atLeast: 3, ranges }],
    }).highFrequencyWords;
    expect(items[0]).toMatchObject({ label: 'said', figure, state, dots });
  });

  test.each<[readonly number[], string]>([
    [[3, 4], 'Each is used as often as asked.'],
    [[3, 2], '1 of 2 words used less often than asked'],
    [[0], '1 of 1 word used less often than asked'],
    [[], 'This lesson teaches no new high-frequency word.'],
  ])('%j uses: %s', (uses, summary) => {
    const newHighFrequencyWords = uses.map((times, n) => ({
      word: `word ${n}`,
      atLeast: 3,
      ranges: rangesOn(...Array.from({ length: times }, (_, line) => line)),
    }));
    expect(modelOf({ newHighFrequencyWords }).highFrequencyWords.summary).toBe(summary);
  });
});

describe('sentences', () => {
  const sentences = (lengths: readonly number[], atMost = 7) => ({
    atMost,
    each: lengths.map((words, line) => ({
      words,
      range: { start: { line, character: 0 }, end: { line, character: 9 } },
    })),
  });

  test('within the limit', () => {
    const { summary, state, limit, columns } = modelOf({ sentences: sentences([5, 7, 1]) }).sentences;
    expect([summary, state, limit]).toEqual(['3 sentences, longest 7 words', 'met', 1]);
    expect(columns.map(({ over, description }) => [over, description])).toEqual([
      [false, 'Sentence 1, 5 words'],
      [false, 'Sentence 2, 7 words'],
      [false, 'Sentence 3, 1 word'],
    ]);
  });

  test('over the limit, the longest gives the height', () => {
    const { summary, state, limit, columns } = modelOf({ sentences: sentences([7, 14, 8]) }).sentences;
    expect([summary, state, limit]).toEqual([
      '3 sentences, longest 14 words; 2 over the limit',
      'short',
      0.5,
    ]);
    expect(columns.map(({ height, over }) => [height, over])).toEqual([
      [0.5, false],
      [1, true],
      [8 / 14, true],
    ]);
    expect(columns[1]?.description).toBe('Sentence 2, 14 words, 7 over the limit');
  });

  test('of very many the longest are drawn, in the order of the text', () => {
    const lengths = Array.from({ length: 1000 }, (_, n) => (n % 10 === 9 ? 12 : 3));
    const { columns, more, summary } = modelOf({ sentences: sentences(lengths) }).sentences;
    expect(more).toBe('the 200 longest of 1,000 are drawn');
    expect(summary).toBe('1,000 sentences, longest 12 words; 100 over the limit');
    expect(columns.filter(({ over }) => over)).toHaveLength(100);
    const order = columns.map(({ key }) => Number(key));
    expect(order).toEqual([...order].sort((a, b) => a - b));
  });

  test('none', () => {
    expect(modelOf({}).sentences).toMatchObject({ state: 'none', summary: '0 sentences, longest 0 words' });
  });
});

describe('pages', () => {
  const page = (number: number, counts = countsOfKinds(10)) => ({
    number,
    words: counts.words,
    counts,
    range: { start: { line: number * 10, character: 0 }, end: { line: number * 10 + 5, character: 0 } },
  });

  test('each with its words, its share and what is over', () => {
    const each = [page(1), page(2, countsOfKinds(20, 3, 0, 0, 2)), page(3, countsOfKinds(0))];
    const { summary, state, limit, pages } = modelOf({ pages: { atMost: 20, each } }).pages;
    expect([summary, state, limit]).toEqual(['3 pages, longest 25 words; 1 over the limit', 'short', 0.8]);
    expect(pages.map(({ label, figure, readable }) => [label, figure, readable])).toEqual([
      ['Page 1', '10 words', '100.0 % readable'],
      ['Page 2', '25 words, 5 over', '92.0 % readable'],
      ['Page 3', '0 words', ''],
    ]);
    expect(pages[1]?.segments.at(-1)).toEqual({ kind: 'not-taught', share: 2 / 25 });
  });
});

test.each([
  [undefined, ''],
  [{ count: 1, errors: 0 }, 'The sequence has 1 problem; show it'],
  [{ count: 5, errors: 0 }, 'The sequence has 5 problems; show the first'],
  [{ count: 5, errors: 1 }, 'The sequence has 1 error; show it'],
])('problems of the sequence: %j', (problems, text) => {
  const [range] = rangesOn(4);
  if (range === undefined) throw new Error('A range was asked for.');
  const sequenceProblems = problems && { uri: 'memory:/sequence.yaml', range, ...problems };
  expect(modelOf(sequenceProblems ? { sequenceProblems } : {}).sequence).toBe(text);
});

test('that a text is read in part only is said before its verdict', () => {
  expect(modelOf({ isCut: true }).readable.verdict).toBe(
    'Too long: only the beginning of the text is read. Target of 95 % reached',
  );
});
