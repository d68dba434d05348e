import { expect, test } from 'vitest';
import { readSequence } from '../../../server/src/sequence/read-sequence.ts';
import { sequenceAsCsv } from '../../../server/src/start/sequence-csv.ts';

test('a sequence as a table: a lesson a row, no cell a formula', () => {
  const sequence = readSequence(`lessons:
  - name: "1"
    title: "=1+1, or t"
    spellings: [t as in top, a as in map]
    high-frequency words: [the]
  - name: "2"
    endings: [s]
    blends: [start]
    syllables: 2
    punctuation: ["?", "!"]
`);
  expect(sequenceAsCsv(sequence).split('\r\n')).toEqual([
    '\ufefflesson,title,spellings,high-frequency words,endings,blends,syllables,punctuation',
    '1,"\'=1+1, or t",t as in top; a as in map,the,,,,',
    '2,,,,s,start,2,? !',
    '',
  ]);
});
