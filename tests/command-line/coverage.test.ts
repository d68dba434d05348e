import { parseXml } from '@rgrove/parse-xml';
import { describe, expect, it } from 'vitest';
import { terminal } from '../support/memory-host.ts';
import { packagePhonics } from '../support/package-phonics.ts';
import { smallSequence, storyAt } from '../support/small-lane.ts';

const night = storyAt('3', '# Night\n\nThe night map.\nThe night pin.');
const pan = storyAt('1', 'The pan sat.', `title: 'A <Pan> & "more"'\n`);
const equals = storyAt('1', 'The map sat.', 'title: "=1+1"\n');
const files = {
  'series/night.md': night,
  'series/pan.md': pan,
  'series/zero.md': equals,
  'series/readme.md': '# Not a story\n',
};

function coverage(more: Readonly<Record<string, string>>, ...given: readonly string[]) {
  return terminal({ 'sequence.yaml': smallSequence, ...files, ...more }, packagePhonics)(
    'coverage',
    'series',
    ...given,
  );
}

describe('coverage', () => {
  it('shows the year for people, in the order of the lessons', () => {
    const { exitCode, output, errors } = coverage({});
    expect({ exitCode, errors }).toEqual({ exitCode: 0, errors: '' });
    expect(output.indexOf('=1+1')).toBeLessThan(output.indexOf('Night'));
    expect(output).toContain('Willow Lane: 3 stories, 6 different words');
    // Lesson 4 has no story yet, and nothing is asked of what comes after the last story.
    expect(output).not.toContain('ck as in lock');
    expect(output).toContain('i as in sit is not used in any of the 2 stories of its own lesson 1.');
  });

  it('tells two stories of one title apart, and claims nothing of one without words', () => {
    const { output } = coverage({
      'series/twin.md': night,
      'series/blank.md': storyAt('1', '', 'title: Blank\n'),
    });
    expect(output).toContain('Night (night.md)');
    expect(output).toContain('Night (twin.md)');
    expect(output).toMatch(/Blank +– +0 /);
  });

  it('has every use in JSON', () => {
    const report = JSON.parse(coverage({}, '--format', 'json').output);
    expect(report.version).toBe(1);
    expect(report.limits).toEqual({ againWithin: 3, unseenFor: 5, metAtLeast: 2 });
    expect(report.stories.map(({ path }: { path: string }) => path)).toEqual([
      'series/pan.md',
      'series/zero.md',
      'series/night.md',
    ]);
    expect(report.spellings.find(({ spelling }: { spelling: string }) => spelling === 'igh')).toEqual({
      spelling: 'igh',
      asIn: 'light',
      lesson: '3',
      total: 2,
      stories: 1,
      uses: [0, 0, 2],
    });
    expect(report.highFrequencyWords).toEqual([
      { word: 'the', lesson: '1', total: 4, stories: 3, uses: [1, 1, 2] },
    ]);
    expect(report.words.at(-2)).toEqual({
      word: 'night',
      kind: 'decodable',
      count: 2,
      stories: 1,
      first: 'series/night.md',
      lesson: '3',
      parts: ['n', 'igh', 't'],
    });
  });

  it('exports every word as CSV, and no formula', () => {
    const words = coverage({}, '--format', 'csv', '--table', 'words').output.split('\r\n');
    expect(words[0]).toBe('\ufeffWord,First lesson,First story,File,Count,Stories,Kind,Parts,Syllables');
    expect(words).toContain("map,1,'=1+1,series/zero.md,2,2,decodable,m a p,1");
    expect(words).toContain('night,3,Night,series/night.md,2,1,decodable,n igh t,1');
    expect(words).toHaveLength(1 + 6 + 1);
  });

  it.each([
    ['stories', 4],
    ['spellings', 10],
    ['high-frequency-words', 2],
    ['words', 7],
    ['gaps', 4],
  ])('writes the table %s with %i rows', (table, rows) => {
    const { output } = coverage({}, '--format', 'csv', '--table', table);
    expect(output.trimEnd().split('\r\n')).toHaveLength(rows);
  });

  it('is one well-formed page that loads nothing and runs nothing', () => {
    const { output } = coverage({}, '--format', 'html');
    // HTML is not XML; apart from four void elements and the style this page is both.
    const body = output
      .replace('<!DOCTYPE html>', '')
      .replace(/<style>[\s\S]*<\/style>/, '')
      .replace(/<(meta|br)([^>]*)>/g, '<$1$2/>');
    expect(() => parseXml(body)).not.toThrow();
    expect(output).not.toMatch(/<script|<link|<img|@import|url\(|https?:/i);
    expect(output).toContain('A &lt;Pan&gt; &amp; &quot;more&quot;');
    expect(output.match(/<svg role="img" aria-labelledby/g)).toHaveLength(4);
    for (const [, id] of output.matchAll(/href="#([^"]+)"/g)) expect(output).toContain(`id="${id}"`);
  });

  it('writes to a file that is not there yet', () => {
    const { exitCode, output, written } = coverage({}, '--format', 'html', '--out', 'year.html');
    expect({ exitCode, output }).toEqual({ exitCode: 0, output: '' });
    expect(new TextDecoder().decode(written?.get('/home/writer/year.html'))).toContain(
      '<h1>Willow Lane</h1>',
    );
    expect(coverage({ 'year.html': 'old' }, '--out', 'year.html')).toMatchObject({
      exitCode: 2,
      errors: 'year.html  The file is there already; --overwrite replaces it.\n',
    });
  });

  it.each([
    ['0', 1],
    ['2', 1],
    ['3', 0],
    ['x', 2],
  ])('with --max-gaps %s ends with %i', (most, exitCode) => {
    expect(coverage({}, '--max-gaps', most).exitCode).toBe(exitCode);
  });

  it('refuses stories of several sequences, unless one is named', () => {
    const more = { 'series/other/sequence.yaml': smallSequence, 'series/other/one.md': pan };
    expect(coverage(more)).toMatchObject({
      exitCode: 2,
      output: '',
      errors:
        'series  These stories follow 2 sequences: sequence.yaml (3), series/other/sequence.yaml (1). Name the folder of one, or read all by one with --sequence FILE.\n',
    });
    expect(coverage(more, '--sequence', 'sequence.yaml').exitCode).toBe(0);
  });

  it('shows what it can of a folder where a file cannot be used', () => {
    const outcome = coverage({ 'series/lost.md': storyAt('99', 'The map.') });
    expect(outcome.exitCode).toBe(2);
    expect(outcome.output).toContain('3 stories');
    expect(outcome.errors).toContain('series/lost.md');
  });
});

describe('coverage --against', () => {
  const strict = (sequence: string) => sequence.replace('readable: 0', 'readable: 95');
  const against = (other: string, ...given: readonly string[]) =>
    coverage(
      { 'sequence.yaml': strict(smallSequence), 'other.yaml': strict(other) },
      '--against',
      'other.yaml',
      ...given,
    );

  it('names the stories that lose', () => {
    // The spelling moves from lesson 3 to lesson 4.
    const later = smallSequence
      .replace('igh as in light', 'b as in bat')
      .replace('ck as in', 'igh as in light, ck as in');
    expect(against(later)).toEqual({
      exitCode: 1,
      output: `loses  series/night.md  100.0 → 66.6 % readable; falls short: 66.6 % readable, target 95 %

By other.yaml: 1 story loses, 0 gain, 2 stand as before.
`,
      errors: '',
    });
  });

  it('names a story whose lesson is gone, in JSON too', () => {
    const renamed = smallSequence.replace('name: "3"', 'name: "three"');
    expect(against(renamed).output).toContain('loses  series/night.md  lesson “3” is not in that sequence');
    const { stories } = JSON.parse(against(renamed, '--format', 'json').output);
    expect(
      stories.map(({ turn, after }: { turn: string; after: object | null }) => [turn, after === null]),
    ).toEqual([
      ['loses', true],
      ['stays', false],
      ['stays', false],
    ]);
  });

  it('has no difference with itself', () => {
    expect(against(smallSequence)).toMatchObject({
      exitCode: 0,
      output: 'By other.yaml: 0 stories lose, 0 gain, 3 stand as before.\n',
    });
  });
});
