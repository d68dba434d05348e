import { describe, expect, it } from 'vitest';
import { type Cell, csvOf } from '../../../server/src/series/report/csv.ts';

const cells: readonly (readonly [Cell, string])[] = [
  ['net', 'net'],
  ['Knock, Knock', '"Knock, Knock"'],
  ['The "Net"', '"The ""Net"""'],
  ['two\nlines', '"two\nlines"'],
  [undefined, ''],
  [12, '12'],
  [-2.4, '-2.4'],
  [1 / 3, '0.3333'],
  [Number.NaN, ''],
  // What a spreadsheet would take for a formula.
  ['=1+1', "'=1+1"],
  ['+1', "'+1"],
  ['-1', "'-1"],
  ['@SUM(A1)', "'@SUM(A1)"],
  ['\t=1', "'\t=1"],
  ['  =1', "'  =1"],
  ['＝1', "'＝1"],
  ['=HYPERLINK("x","y")', '"\'=HYPERLINK(""x"",""y"")"'],
];

describe('CSV for a spreadsheet', () => {
  it.each(cells)('writes %j as %j', (cell, expected) => {
    expect(csvOf([[cell, 'end']])).toBe(`\ufeff${expected},end\r\n`);
  });

  it('ends every row with CR and LF, behind a byte-order mark', () => {
    expect(csvOf([['a'], ['b']])).toBe('\ufeffa\r\nb\r\n');
  });
});
