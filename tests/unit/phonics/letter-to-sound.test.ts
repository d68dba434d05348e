import { describe, expect, it } from 'vitest';
import { encodeCompactModel } from '../../../server/build/letter-to-sound/compact-model.ts';
import { modelOfEntries } from '../../../server/build/letter-to-sound/lexicon-model.ts';
import { NgramModel } from '../../../server/build/letter-to-sound/n-gram.ts';
import type { AlignedPart } from '../../../server/src/phonics/align.ts';
import { openJointNgrams } from '../../../server/src/phonics/joint-ngrams.ts';
import { createLetterToSound } from '../../../server/src/phonics/letter-to-sound.ts';
import type { Entry } from '../../../server/src/phonics/lexicon.ts';
import type { Phoneme, Stress } from '../../../server/src/phonics/phoneme.ts';
import { placed } from '../../../server/src/phonics/spans.ts';

/** Words of a small invented language of two-syllable words: `letters=SOUNDS stress` for each part. */
const lesson = ['b', 'd', 'm', 'n', 't'].flatMap((one) =>
  ['b', 'd', 'm', 'n', 't'].flatMap((two) => [
    `${one} a=AE1 ${two}${two}=${two} i=IH0 n`,
    `${one} o=AA1 ${two}${two}=${two} o_e=OW2 n`,
    `sh=SH ${one === 'b' ? 'i=IH1' : 'e=EH1'} ${two}${two}=${two} er=ER0`,
    `${one} e=IH0 ${two} a_e=EY1 t`,
  ]),
);

const reader = createLetterToSound(modelOfEntries(lesson.map(entryOf), { order: 4, leastGain: 0 }));

function entryOf(text: string): Entry {
  const parts = text.split(' ').map(partOf);
  const isSplit = parts.some((part) => part.letters.endsWith('_e'));
  const letters = parts.map((part) => part.letters.replace('_e', '')).join('');
  return {
    word: isSplit ? `${letters}e` : letters,
    band: 1,
    usefulness: 0,
    isFamiliar: false,
    partsOfSpeech: 0,
    readings: [{ parts }],
  };
}

function partOf(text: string): AlignedPart {
  const [letters = '', sound = letters] = text.split('=');
  const stress = /\d/.exec(sound)?.[0];
  const sounds = [sound.replace(/\d/, '').toUpperCase() as Phoneme];
  return stress === undefined ? { letters, sounds } : { letters, sounds, stress: Number(stress) as Stress };
}

function read(word: string): string {
  return reader
    .pronounce(word)
    .map(({ letters, sounds, stress }) => `${letters}=${sounds.join('+')}${stress ?? ''}`)
    .join(' ');
}

describe('a word that is in no list', () => {
  it.each([
    ['taddin', 't=T a=AE1 dd=D i=IH0 n=N'],
    ['shenner', 'sh=SH e=EH1 nn=N er=ER0'],
    ['mottone', 'm=M o=AA1 tt=T o_e=OW2 n=N'],
    ['debate', 'd=D e=IH0 b=B a_e=EY1 t=T'],
    ['Taddin', 't=T a=AE1 dd=D i=IH0 n=N'],
    // Never heard of in this order, but each piece is known.
    ['shemmate', 'sh=SH e=EH1 mm=M a_e=EY1 t=T'],
  ])('%s is read as its like', (word, expected) => {
    expect(read(word)).toBe(expected);
  });

  it('is read by rule, not by the model, when it is short and regular', () => {
    expect(read('plim')).toBe('p=P l=L i=IH1 m=M');
    expect(read('trunk')).toBe('t=T r=R u=AH1 n=NG k=K');
  });

  it('keeps every letter, whatever it is made of', () => {
    for (const word of ['taddin', 'qqq', 'ate', 'e', 'shenate', 'tad7in', 'zzeeaate', "n'ate", 'änab', '']) {
      const letters = placed(word, reader.pronounce(word)).flatMap((part) =>
        part.spans.map(([from, to]) => to - from),
      );
      expect([word, letters.reduce((sum, length) => sum + length, 0)]).toEqual([word, word.length]);
    }
  });

  it('has exactly one vowel with the main stress when the model gave none', () => {
    const stresses = reader.pronounce('tanin').map((part) => part.stress);
    expect(stresses.filter((stress) => stress === 1)).toHaveLength(1);
  });
});

describe('the compact model', () => {
  const sequences = ['0 1 2', '0 1 2', '0 1 3', '4 1 3', '4 1 3', '2 2 4'].map((text) =>
    Int32Array.from(text.split(' '), Number),
  );
  const whole = new NgramModel(sequences, 5, 3);

  function open(leastGain: number) {
    return openJointNgrams(encodeCompactModel(whole, ['a', 'b', 'c', 'd', 'e'], { order: 3, leastGain }));
  }

  it.each([0, 0.5, 1, 100])('gives probabilities that add up to one, pruned at %s', (leastGain) => {
    const model = open(leastGain);
    for (const context of [[], [0], [0, 1], [4, 1], [3, 3]]) {
      const at = context.reduce((before, token) => model.after(before, token), model.start);
      const each = [0, 1, 2, 3, 4].map((token) => Math.exp(model.logProbability(at, token)));
      const all = each.reduce((sum, value) => sum + value, Math.exp(model.logProbabilityOfEnd(at)));
      // Logarithms are kept in steps of 1/16.
      expect(all).toBeGreaterThan(0.93);
      expect(all).toBeLessThan(1.07);
    }
  });

  it('says the same as the whole model when nothing is left out', () => {
    const model = open(0);
    for (const [context, token] of [
      [[0], 1],
      [[0, 1], 2],
      [[0, 1], 3],
      [[4, 1], 3],
      [[4, 1], 2],
    ] as const) {
      const compactAt = context.reduce((before, next) => model.after(before, next), model.start);
      const wholeAt = context.reduce((before, next) => whole.next(before, next), whole.start);
      const difference = model.logProbability(compactAt, token) - whole.logProbability(wholeAt, token);
      // Half a step for each of the logarithms that make it up.
      expect(Math.abs(difference)).toBeLessThan(0.1);
    }
  });

  it('is refused when the bytes are something else', () => {
    expect(() => openJointNgrams(new Uint8Array([1, 2, 3]))).toThrow(
      'not a Battledore letter-to-sound model',
    );
  });
});
