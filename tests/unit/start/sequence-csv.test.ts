import { expect, test } from 'vitest';
import { readSequence } from '../../../server/src/sequence/read-sequence.ts';
import { sequenceAsCsv } from '../../../server/src/start/sequence-csv.ts';

test('a sequence as a table: what holds for all, then a lesson a row, no cell a formula', () => {
  const sequence = readSequence(`title: Fig Hill
lessons:
  - name: "1"
    title: "=1+1, or t"
    spellings: [t as in top, a as in map]
    high-frequency words: [the]
  - name: "2"
    endings: [s]
    blends: [start]
    syllables: 2
    punctuation: ["?", "!"]
    targets: { page: 30 }
`);
  expect(sequenceAsCsv(sequence).split('\r\n')).toEqual([
    '\ufefflesson,title,spellings,high-frequency words,endings,blends,syllables,punctuation,readable,sentence,page,practice,repeats,story words',
    '(all lessons),Fig Hill,,,,,,,95,7,20,8,3,3',
    '1,"\'=1+1, or t",t as in top; a as in map,the,,,,,,,,,,',
    '2,,,,s,start,2,? !,,,30,,,',
    '',
  ]);
});

test('what few sequences say has a column of its own then', () => {
  const sequence = readSequence(`cot and caught: apart
pronunciations: { Plim: p-l-i-m }
lessons:
  - name: "1"
    endings: []
`);
  expect(sequenceAsCsv(sequence)).toContain('"cot and caught: apart\npronunciation Plim: p-l-i-m"');
  expect(sequenceAsCsv(sequence)).toContain('1,,,,none,');
});
