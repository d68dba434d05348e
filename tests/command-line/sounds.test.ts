import { describe, expect, it } from 'vitest';
import { handPhonics } from '../support/hand-phonics.ts';
import { terminal } from '../support/memory-host.ts';
import { pondPhonics } from '../support/pond-phonics.ts';

const call = terminal({}, pondPhonics);

describe('sounds', () => {
  it.each(['map,cake', 'map, cake.', 'map cake', 'map-cake', '“map” (cake)'])(
    'parts the words of %j',
    (given) => {
      const { words } = JSON.parse(call('sounds', '--format', 'json', given).output);
      expect(words.map(({ word }: { word: string }) => word)).toEqual(['map', 'cake']);
    },
  );

  it('is the report of the design as JSON', () => {
    const { output, exitCode } = call('sounds', '--format', 'json', 'cake');
    expect(exitCode).toBe(0);
    expect(JSON.parse(output)).toEqual({
      version: 1,
      words: [
        {
          word: 'cake',
          readings: [
            {
              source: 'lexicon',
              parts: [
                { letters: 'c', sounds: ['K'], spans: [[0, 1]] },
                {
                  letters: 'a_e',
                  sounds: ['EY'],
                  spans: [
                    [1, 2],
                    [3, 4],
                  ],
                },
                { letters: 'k', sounds: ['K'], spans: [[2, 3]] },
              ],
              syllables: [{ text: 'cake', stress: 0 }],
            },
          ],
        },
      ],
    });
  });

  it('sets graphemes over their sounds for people', () => {
    expect(call('sounds', 'night', 'knee').output).toBe(`night
  n  igh  t
  n  ī    t
  N  AY   T
  1 syllable: night; from the lexicon

knee
  kn  ee
  n   ē
  N   IY
  1 syllable: knee; from the lexicon
`);
  });

  it('says when a reading was worked out', () => {
    expect(call('sounds', 'zat').output).toContain('in no list; worked out from the letters');
  });

  it('takes the parts of a phrase and of a hyphenated word one by one', () => {
    const words = JSON.parse(call('sounds', 'net map', 'sun-top', '--format=json').output).words;
    expect(words.map(({ word }: { word: string }) => word)).toEqual(['net', 'map', 'sun', 'top']);
  });

  it('shows readings once for people that differ in nothing they are shown', () => {
    const weak = handPhonics('its i=IH1 t=T s=S\nits i=IH0 t=T s=S');
    const { output } = terminal({}, weak)('sounds', 'its');
    expect(output.match(/from the lexicon/g)).toHaveLength(1);
  });

  it('goes on with the other words', () => {
    expect(call('sounds', '12', 'map')).toMatchObject({
      exitCode: 2,
      output: expect.stringContaining('map\n'),
    });
  });
});
