import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { rowsOf } from '../../../server/src/phonics/table.ts';
import { phonics, said } from '../../support/reads.ts';

const rules = rowsOf(
  readFileSync(new URL('../../../server/data/heteronym-rules.tsv', import.meta.url), 'utf8'),
  ['words', 'use', 'example'],
);

/** The use and the sounds of the heteronym in a sentence. */
function chosen(sentence: string, wanted?: string): { use: string | undefined; sounds: string } {
  const words = sentence.match(/[\w'’]+/g) ?? [];
  const at = words.findIndex((word) =>
    wanted === undefined
      ? !/^(a|the)$/i.test(word) && phonics.heteronyms.sensesOf(word) !== undefined
      : word.toLowerCase() === wanted,
  );
  const index = phonics.heteronyms.choose(words, at);
  const word = words[at] ?? '';
  return {
    use: phonics.heteronyms.sensesOf(word)?.[index]?.use,
    sounds: said(phonics.readingsOf(word)[index]),
  };
}

describe('the sentence chooses the reading of a heteronym', () => {
  it.each(rules)('$words is $use: $example', ({ words, use, example }) => {
    expect(chosen(example, words === '*' ? undefined : words).use).toBe(use);
  });

  // Held-out sentences of ours, written before the rules were tried on them.
  it.each([
    ['Can you read to me?', 'R IY D'],
    ['The wind bent the tree.', 'W IH N D'],
    ['They live in a den.', 'L IH V'],
    ['The dog will lead us home.', 'L IY D'],
    ['Mom had to close the shop.', 'K L OW Z'],
    ['Stay close to me.', 'K L OW S'],
    ['What use is a wet match?', 'Y UW S'],
    ['You can use my cup.', 'Y UW Z'],
    ['A tear ran down her cheek.', 'T IH R'],
    ['Do not tear the map.', 'T EH R'],
    ['She has a red bow on her hat.', 'B OW'],
    ['Does the frog hop?', 'D AH Z'],
    ['Dad read the note and ran.', 'R EH D'],
    ['It is in our house.', 'HH AW S'],
    ['The gift is a present for Gran.', 'P R EH Z AH N T'],
    ['We sat in a row.', 'R OW'],
    ['He lives on a hill.', 'L IH V Z'],
    ['Her eyes filled with tears.', 'T IH R Z'],
    ['Wait a minute.', 'M IH N AH T'],
    ['A white dove sat in the tree.', 'D AH V'],
  ])('%s', (sentence, sounds) => expect(chosen(sentence).sounds).toBe(sounds));

  it('never reads a and the in their strong form', () => {
    expect(phonics.heteronyms.choose(['The', 'ape', 'has', 'a', 'nut'], 0)).toBe(0);
    expect(phonics.heteronyms.choose(['The', 'ape', 'has', 'a', 'nut'], 3)).toBe(0);
  });

  it('leaves words with one meaning alone', () => {
    expect(phonics.heteronyms.sensesOf('again')).toBeUndefined();
    expect(phonics.heteronyms.choose(['Come', 'again'], 1)).toBe(0);
  });

  it('has as many senses as readings', () => {
    for (const word of [
      'read',
      'live',
      'lives',
      'wind',
      'tear',
      'close',
      'use',
      'bow',
      'does',
      'house',
      'record',
      'dove',
    ]) {
      expect(phonics.readingsOf(word).length, word).toBe(phonics.heteronyms.sensesOf(word)?.length);
    }
  });
});
