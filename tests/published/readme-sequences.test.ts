import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readSequence } from '../../server/src/sequence/read-sequence.ts';
import { teachingOf } from '../../server/src/sequence/teaching.ts';
import { packagePhonics } from '../support/package-phonics.ts';

const readme = readFileSync(new URL('../../README.md', import.meta.url), 'utf8');
const sequences = [...readme.matchAll(/^```yaml\n([\s\S]*?)^```/gm)]
  .map(([, text = '']) => text)
  .filter((text) => text.includes('lessons:'));

describe('the sequences that the README shows', () => {
  it('are there', () => expect(sequences.length).toBeGreaterThan(1));

  it.each(sequences)('are read without a complaint: %s', (text) => {
    expect(teachingOf(readSequence(text), packagePhonics).problems).toEqual([]);
  });
});
