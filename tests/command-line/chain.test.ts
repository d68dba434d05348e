import { describe, expect, it } from 'vitest';
import { handPhonics } from '../support/hand-phonics.ts';
import { terminal } from '../support/memory-host.ts';

const phonics = handPhonics(`
  at   a=AE1 t=T
  mat  m=M a=AE1 t=T
  map  m=M a=AE1 p=P
  mip  m=M i=IH1 p=P
`);
const call = terminal(
  {
    'sequence.yaml': `lessons:
  - name: "1"
    spellings: [m as in mat, a as in mat, t as in mat]
  - name: "2"
    spellings: [p as in map, i as in mip]
`,
  },
  phonics,
);

describe('chain', () => {
  it('shows each step for people', () => {
    expect(call('chain', '--lesson', '2', '--length', '4', '--start', 'at')).toEqual({
      exitCode: 0,
      output: `   1  at
   2  mat   add m
   3  map*  change t to p
   4  mip*  change a to i

* practises a new spelling: p as in map, i as in mip
`,
      errors: '',
    });
  });

  it('gives the longest when there is none of that length, says so, and falls short', () => {
    const { output, exitCode } = call('chain', '--lesson', '1', '--length', '5');
    expect(exitCode).toBe(1);
    expect(output).toContain('There is no chain of 5 words here; this is the longest, 2 words.');
  });

  it('is a report with a version as JSON', () => {
    const { output } = call('chain', '--lesson', '1', '--length', '2', '--start', 'mat', '--format', 'json');
    const report = JSON.parse(output);
    expect(report).toMatchObject({ version: 1, lesson: '1', length: 2, complete: true });
    expect(report.chain.map(({ word }: { word: string }) => word)).toEqual(['mat', 'at']);
    expect(report.chain.map(({ step }: { step: unknown }) => step)).toEqual([
      null,
      { kind: 'drop', place: 'start', at: 0, from: 'm', to: null },
    ]);
  });

  it.each([
    [['--lesson', '1', '--start', 'map'], '“map” cannot begin a chain at lesson 1'],
    [['--lesson', '1', '--length', '1'], '--length takes a whole number from 2 to 100; “1” is none.'],
    [['--lesson', '1', '--seed', 'x'], '--seed takes a whole number from 0 to'],
    [['--lesson', '1', '--lenght', '3'], 'chain has no option “--lenght”. Did you mean “--length”?'],
    [['--lesson', '3'], 'sequence.yaml has no lesson “3”.'],
  ])('%j cannot be meant', (given, message) => {
    const { errors, exitCode, output } = call('chain', ...given);
    expect(errors).toContain(message);
    expect({ exitCode, output }).toEqual({ exitCode: 2, output: '' });
  });
});
