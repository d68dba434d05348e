import { describe, expect, it } from 'vitest';
import { readSequence } from '../../../server/src/sequence/read-sequence.ts';
import { teachingOf } from '../../../server/src/sequence/teaching.ts';
import { phonics } from '../../support/reads.ts';

/** Whether the word can be sounded out by children who know `a as in ball` and the consonants. */
function isDecodable(word: string, line: string): boolean {
  const sequence = readSequence(`title: Accents
${line}
lessons:
  - name: "1"
    spellings: [f as in fan, th as in this, er as in her, b as in bat, a as in ball, ll as in hill, d as in dog, o as in top, g as in dog, r as in rat, t as in top]
`);
  expect(sequence.problems).toEqual([]);
  const lesson = sequence.lessons[0];
  if (!lesson) throw new Error('The sequence has no lesson.');
  const [reading] = phonics.readingsOf(word);
  if (!reading) throw new Error(`“${word}” has no reading.`);
  return teachingOf(sequence, phonics).taughtBy(lesson).judge(reading).missing.length === 0;
}

describe('cot and caught', () => {
  it('are one vowel unless the sequence says otherwise', () => {
    expect(isDecodable('father', '')).toBe(true);
    expect(isDecodable('father', 'cot and caught: merged')).toBe(true);
    expect(isDecodable('father', 'cot and caught: apart')).toBe(false);
  });

  it('leave the uneven short o of the dictionary alone', () => {
    for (const line of ['', 'cot and caught: apart']) {
      expect(isDecodable('dog', line)).toBe(true);
      expect(isDecodable('frog', line)).toBe(true);
    }
  });

  it('take no other value', () => {
    const text = 'cot and caught: maybe\nlessons: [{ name: "1" }]\n';
    const [problem] = readSequence(text).problems;
    expect(problem?.message).toContain('merged');
    expect(text.slice(problem?.span.start, problem?.span.end)).toBe('maybe');
  });
});
