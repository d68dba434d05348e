import { describe, expect, it } from 'vitest';
import { align } from '../../../server/build/letter-to-sound/alignment.ts';
import { Decoder } from '../../../server/build/letter-to-sound/decoder.ts';
import { NgramModel } from '../../../server/build/letter-to-sound/n-gram.ts';
import { distanceBetween, scoreReadings } from '../../../server/build/letter-to-sound/score.ts';
import {
  formatWordList,
  parseWordList,
  splitWords,
  wordsOfDictionary,
} from '../../../server/build/letter-to-sound/word-list.ts';

describe('a word list', () => {
  it('gathers the lines of a word, without stress, and each reading once', () => {
    const list = parseWordList('Read\tR EH1 D\ncat\tK AE1 T\n\nread\tR IY1 D\nread\tR IY D\n');
    expect(list.map(({ word, readings }) => [word, readings.map((reading) => reading.join(' '))])).toEqual([
      ['read', ['R EH D', 'R IY D']],
      ['cat', ['K AE T']],
    ]);
    expect(parseWordList(formatWordList(list))).toEqual(list);
  });

  it.each([
    ['no tab', 'cat K AE T', 'Line 1'],
    ['no sounds', 'cat\tK AE T\ndog\t', 'Line 2'],
    ['no word', '\tK AE T', 'Line 1'],
  ])('with %s is refused at its line', (_, text, place) => {
    expect(() => parseWordList(text)).toThrow(place);
  });

  it('of the dictionary has alphabetic words only, alternates with their word, comments dropped', () => {
    const words = wordsOfDictionary({
      "a's": 'EY1 Z',
      fine: 'F AY1 N',
      'fine(2)': 'F IH1 N AH0 # org, irish',
    });
    expect(words).toEqual([
      {
        word: 'fine',
        readings: [
          ['F', 'AY', 'N'],
          ['F', 'IH', 'N', 'AH'],
        ],
      },
    ]);
  });

  it('is split alike by the same seed, whatever its order, and no word is on both sides', () => {
    const words = Array.from({ length: 50 }, (_, index) => ({ word: `w${index}`, readings: [['B']] }));
    const split = splitWords(words, { testSize: 10, seed: 4 });
    expect(splitWords([...words].reverse(), { testSize: 10, seed: 4 })).toEqual(split);
    expect(splitWords(words, { testSize: 10, seed: 5 })).not.toEqual(split);
    const all = [...split.test, ...split.train].map(({ word }) => word);
    expect(split.test).toHaveLength(10);
    expect(new Set(all).size).toBe(50);
  });
});

describe('a score', () => {
  it('counts a word right by any of its readings, and phone errors against the nearest', () => {
    const words = parseWordList(
      'read\tR EH D\nread\tR IY D\nfrost\tF R AO S T\ncat\tK AE T\nrabbit\tR AE B AH T\n',
    );
    const given = ['R IY D', 'F R AA S T', 'K AA S', 'R AE B AH T'].map((reading) => reading.split(' '));
    expect(scoreReadings(words, given)).toEqual({
      words: 4,
      wrong: 2,
      phones: 16,
      phoneErrors: 3,
      wrongByReducedVowel: 1,
    });
  });

  it.each([
    ['', '', 0],
    ['K AE T', '', 3],
    ['K AE T', 'K AE T S', 1],
    ['S K AE T', 'K AH T', 2],
  ])('takes %j and %j to be %i phones apart', (left, right, distance) => {
    const phones = (text: string) => text.split(' ').filter(Boolean);
    expect(distanceBetween(phones(left), phones(right))).toBe(distance);
    expect(distanceBetween(phones(right), phones(left))).toBe(distance);
  });
});

describe('alignment and search', () => {
  // Letters 0 to 3, phones 0 to 2: 2 is silent after 1, 3 says two phones.
  const pairs = [
    { letters: [0, 1, 2], phones: [0, 1] },
    { letters: [1, 2, 0], phones: [1, 0] },
    { letters: [0, 1], phones: [0, 1] },
    { letters: [3, 0], phones: [2, 1, 0] },
    { letters: [0], phones: [1, 1, 1] },
  ];
  const shapes = [0, 1, 2].map((phones) => ({ letters: 1, phones }));
  const { tokens, sequences } = align(pairs, shapes, { letterCount: 4, phoneCount: 3, rounds: 10 });
  const decoder = new Decoder(new NgramModel(sequences, tokens.length, 3), tokens, { beam: 20, margin: 30 });

  it('learns which letter says what, and leaves out what cannot be cut', () => {
    const written = sequences.map((sequence) =>
      Array.from(sequence, (token) => `${tokens[token]?.letters}:${tokens[token]?.phones.join('+')}`).join(
        ' ',
      ),
    );
    expect(written).toEqual(['0:0 1:1 2:', '1:1 2: 0:0', '0:0 1:1', '3:2+1 0:0']);
  });

  it('reads a word it has not met from its pieces', () => {
    expect(decoder.readings([3, 1, 2], 1).map(({ phones }) => phones)).toEqual([[2, 1, 1]]);
    expect(decoder.readings([0, 9], 1)).toEqual([]);
  });

  it('gives each reading the probability that it has by itself', () => {
    for (const { phones, score } of decoder.readings([0, 1, 2], 5)) {
      expect(decoder.logProbability([0, 1, 2], phones)).toBeCloseTo(score, 6);
    }
  });
});
