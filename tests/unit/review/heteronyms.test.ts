import { describe, expect, it } from 'vitest';
import { likelierReading, likelierSounds } from '../../../server/src/review/heteronyms.ts';
import { packagePhonics } from '../../support/package-phonics.ts';

describe('heteronyms', () => {
  it.each([...likelierSounds])('%s is read with %s', (word, sounds) => {
    const likelier = likelierReading(word, packagePhonics.readingsOf(word));
    const said = likelier?.parts.flatMap((part) => part.sounds).join(' ');
    expect(` ${said} `).toContain(` ${sounds} `);
  });

  it('are told apart by the sounds the table names', () => {
    for (const word of ['read', 'wind', 'live', 'tear', 'lead', 'close', 'use', 'bow']) {
      const [first, second] = packagePhonics.readingsOf(word);
      const likelier = likelierReading(word, packagePhonics.readingsOf(word));
      expect([first, second]).toContain(likelier);
      expect(
        likelierReading(
          word,
          [second, first].flatMap((reading) => reading ?? []),
        ),
      ).toBe(likelier);
    }
  });

  it('leaves other words alone', () => {
    expect(likelierReading('again', packagePhonics.readingsOf('again'))).toBeUndefined();
  });
});
