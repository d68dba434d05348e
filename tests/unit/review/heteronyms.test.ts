import { describe, expect, it } from 'vitest';
import { likelierParts, likelierReading } from '../../../server/src/review/heteronyms.ts';
import { packagePhonics } from '../../support/package-phonics.ts';

describe('heteronyms', () => {
  it.each([...likelierParts])('%s has two readings, and one of them has %s', (word, part) => {
    const readings = packagePhonics.readingsOf(word);
    const likelier = likelierReading(word, readings);
    expect(readings.length).toBeGreaterThan(1);
    expect(likelier?.parts.map(({ letters, sounds }) => `${letters}=${sounds.join('+')}`)).toContain(part);
  });

  it('leaves other words alone', () => {
    expect(likelierReading('again', packagePhonics.readingsOf('again'))).toBeUndefined();
  });
});
