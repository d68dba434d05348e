import { describe, expect, it } from 'vitest';
import { terminal } from '../support/memory-host.ts';
import { pondPhonics, pondSequence } from '../support/pond-phonics.ts';

const call = terminal(
  {
    'sequence.yaml': pondSequence,
    'other.yaml':
      'lessons:\n  - name: only\n    title: a start\n    spellings: [m as in map, a as in map, p as in map]\n',
    'story.md': '---\nlesson: "1"\n---\n# The Sun\n\nThe map.\n',
  },
  pondPhonics,
);

describe('words', () => {
  it('lists the words of a lesson for people', () => {
    expect(call('words', '--lesson', '1', '--with', 'a')).toEqual({
      exitCode: 0,
      output: `Lesson 1

  map*  nap*  sat*

3 words, and no more.
* practises what is new: m as in map, p as in map, a as in map, s as in sun, n as in sun, t as in top, e as in ten and the.
`,
      errors: '',
    });
  });

  it('is a report with a version as JSON', () => {
    const { output, exitCode } = call(
      'words',
      '--lesson',
      '1',
      '--with',
      'a',
      '--limit',
      '1',
      '--format',
      'json',
    );
    expect(exitCode).toBe(0);
    expect(JSON.parse(output)).toEqual({
      version: 1,
      lesson: '1',
      more: true,
      words: [
        {
          word: 'map',
          kind: 'decodable',
          new: true,
          familiar: false,
          base: null,
          parts: [
            { letters: 'm', sounds: ['M'], spans: [[0, 1]] },
            { letters: 'a', sounds: ['AE'], spans: [[1, 2]] },
            { letters: 'p', sounds: ['P'], spans: [[2, 3]] },
          ],
          syllables: ['map'],
          newSpellings: ['m as in map', 'p as in map', 'a as in map'],
        },
      ],
    });
  });

  it.each([
    [['--with', 'a', '--place', 'end'], []],
    [['--with', 'm', '--place', 'start'], ['map']],
    [
      ['--with', 'e as in ten'],
      ['net', 'ten'],
    ],
    [
      ['--sound', 'eh'],
      ['net', 'ten'],
    ],
    [
      ['--sound', 'ĕ'],
      ['net', 'ten'],
    ],
    [
      ['--sound', 'short E'],
      ['net', 'ten'],
    ],
    [['--sound', 'long e'], []],
    [['--sounds', '3', '--with', 's'], ['sat']],
    [['--syllables', '2'], []],
    [['--part-of-speech', 'verb'], []],
    [['--with', 'a', '--used-in', 'story.md'], ['map']],
    [
      ['--with', 'a', '--unused-in', 'story.md'],
      ['nap', 'sat'],
    ],
    [['--sequence', 'other.yaml', '--lesson', 'only'], ['map']],
  ])('%j', (given, words) => {
    const lesson = given.includes('--lesson') ? [] : ['--lesson', '1'];
    const { output, exitCode } = call('words', ...lesson, ...given, '--format', 'json');
    expect(JSON.parse(output).words.map(({ word }: { word: string }) => word)).toEqual(words);
    expect(exitCode).toBe(words.length > 0 ? 0 : 1);
  });

  it.each([
    ['igh', 'igh as in light is not taught yet; lesson 3 teaches it.\n'],
    ['igh as in light', 'igh as in light is not taught yet; lesson 3 teaches it.\n'],
    ['sh', 'No lesson teaches sh by itself.\n'],
  ])('says that %s is not taught yet, where there is no word with it', (spelling, reason) => {
    expect(call('words', '--lesson', '1', '--with', spelling)).toMatchObject({ exitCode: 1, errors: reason });
  });

  it('gives no such reason for a spelling that is taught', () => {
    expect(call('words', '--lesson', '1', '--with', 'e', '--place', 'start').errors).toBe('');
  });

  it.each([
    [[], 'words needs --lesson NAME.'],
    [['--lesson', '12'], 'sequence.yaml has no lesson “12”. Its lessons are “1” to “3”.'],
    [['--lesson', 'Lesson 2'], 'sequence.yaml has no lesson “Lesson 2”. Did you mean “2”?'],
    [['--lesson', 'x'], 'sequence.yaml has no lesson “x”. Its lessons are “1” to “3”.'],
    [['--lesson', '02'], 'sequence.yaml has no lesson “02”. Did you mean “2”?'],
    [['--lesson', '1', 'map'], 'words takes options only; “map” is none.'],
    [['--lesson', '1', '--new=yes'], '--new takes no value.'],
    [
      ['--lesson', '1', '--place', 'ende', '--with', 'a'],
      '“ende” is not a place; there is start, middle and end. Did you mean “end”?',
    ],
    [
      ['--lesson', '1', '--place', 'end'],
      '--place says where a spelling or sound stands; give --with or --sound too.',
    ],
    [['--lesson', '1', '--limit', '0'], '--limit takes a whole number from 1 to 100000; “0” is none.'],
    [
      ['--lesson', '1', '--sounds', 'many'],
      '--sounds takes a number such as 3, or two such as 3-4; “many” is neither.',
    ],
    [
      ['--lesson', '1', '--sound', 'EHH'],
      '“EHH” is not a sound. Did you mean “EH”? Write it as dictionaries do',
    ],
    [['--lesson', '1', '--with', '12'], '“12” is no spelling; write sh, a_e, st, or “ow as in snow”.'],
    [['--lesson', '1', '--with', 'q as in map'], '“q” does not stand in “map”, which is m-a-p.'],
    [['--lesson', '1', '--used-in', 'gone.md'], 'The file “gone.md” is not there.'],
    [['--lesson', '1', '--sequence', 'gone.yaml'], 'The sequence “gone.yaml” is not there.'],
  ])('%j cannot be meant', (given, message) => {
    const { errors, exitCode, output } = call('words', ...given);
    expect(errors).toContain(message);
    expect({ exitCode, output }).toEqual({ exitCode: 2, output: '' });
  });
});
