import { describe, expect, test } from 'vitest';
import { packagePhonics } from '../support/package-phonics.ts';
import { smallSequence, storyAt } from '../support/small-lane.ts';
import { sitDown } from '../support/writing-desk.ts';

const path = '/lane/a.md';
const bomb = `a: &a [x, x, x, x, x, x, x, x, x]
b: &b [*a, *a, *a, *a, *a, *a, *a, *a, *a]
c: &c [*b, *b, *b, *b, *b, *b, *b, *b, *b]
d: &d [*c, *c, *c, *c, *c, *c, *c, *c, *c]
e: &e [*d, *d, *d, *d, *d, *d, *d, *d, *d]
f: &f [*e, *e, *e, *e, *e, *e, *e, *e, *e]
lessons: *f
`;

async function deskWith(text: string, sequence = smallSequence) {
  const desk = await sitDown({ files: { '/lane/sequence.yaml': sequence } });
  await desk.open(path, text);
  return desk;
}

describe('a hostile story', () => {
  test.each([
    ['a line of 900 kB', storyAt('2', `${'map '.repeat(225_000)}`)],
    ['10,000 nested quotes', storyAt('2', `${'>'.repeat(10_000)} map\n\nMap.`)],
    ['10,000 nested brackets', storyAt('2', `${'['.repeat(10_000)}map${']'.repeat(10_000)}`)],
    ['an alias bomb in the front matter', `---\n${bomb}lesson: "2"\n---\nMap.\n`],
    ['lone surrogates', storyAt('2', 'Ma\ud800p \udc00 \ud83d nap.')],
    ['nothing but its front matter', storyAt('2', '')],
    ['signs that mean nothing', storyAt('2', '\u0000\u0001\u202e\u2028\u2029\ufeff map')],
  ])(
    'with %s is answered, and the next is checked',
    async (_, text) => {
      const desk = await deskWith(text);
      expect(desk.published.length + desk.gauges.length).toBeGreaterThan(0);
      expect(desk.log).toEqual([]);
      await desk.open('/lane/b.md', storyAt('2', 'Night.'));
      expect(await desk.marks('/lane/b.md')).toEqual(['untaught-spelling: Night']);
    },
    20_000,
  );

  test('with a word of 900,000 letters is answered with a short message', async () => {
    const files = { '/lane/sequence.yaml': smallSequence };
    const desk = await sitDown({ phonics: packagePhonics, files });
    await desk.open(path, storyAt('2', `${'m'.repeat(900_000)} sat.`));
    expect(await desk.messages(path)).toContain(
      '“mmmmmmmmmmmmmmmmmmmm…” has 900000 letters. That is more than any English word has, so it is not read.',
    );
  });

  test('of 5 MB is refused with a message that names the setting, and to the gauge', async () => {
    const desk = await deskWith(storyAt('2', 'The map sat.\n\n'.repeat(400_000)));
    expect(await desk.messages(path)).toEqual([
      'This file is not checked: it has 5469 kilobytes, and the setting “battledore.largestFile” allows 1000.',
    ]);
    expect(desk.lastGauge(path)).toMatchObject({ reason: 'too-large' });
  });

  test('that is refused is checked once the setting allows it', async () => {
    const desk = await deskWith(storyAt('2', `Night. ${'Map. '.repeat(1000)}`));
    await desk.changeSettings({ largestFile: 1 });
    expect(await desk.marks(path)).toEqual(['front-matter-problem: ---']);
    await desk.changeSettings({ largestFile: 100 });
    expect(await desk.marks(path)).toContain('untaught-spelling: Night');
  });

  test('of 5 MB that is no story is left alone', async () => {
    const desk = await deskWith('The map sat.\n\n'.repeat(400_000));
    expect(await desk.marks(path)).toEqual([]);
  });

  test.each([
    ['CRLF', '\r\n'],
    ['CR', '\r'],
  ])('with line ends of %s has its marks in the right places', async (_, end) => {
    const desk = await deskWith(storyAt('2', 'Map.\n\nThe night map.').replaceAll('\n', end));
    const marks = await desk.marks(path);
    expect(marks.filter((mark) => mark.startsWith('untaught'))).toEqual(['untaught-spelling: night']);
  });

  test('with mixed line ends, a byte-order mark, emoji and combining accents has its marks in the right places', async () => {
    const desk = await deskWith(
      `\ufeff${storyAt('2', 'Map 😀.\r\n\rThe 👩‍👧 night map.\n\nE\u0301e light.')}`,
    );
    const marks = await desk.marks(path);
    expect(marks).toContain('untaught-spelling: night');
    expect(marks).toContain('untaught-spelling: light');
  });
});

describe('a hostile sequence', () => {
  test.each([
    ['broken YAML', 'lessons: [\n  - {'],
    ['an alias bomb', bomb],
    ['something else altogether', 'just a sentence'],
    ['nothing', ''],
    ['a single NUL', '\u0000'],
    ['2 MB of lessons', `lessons:\n${'  - name: "x"\n'.repeat(150_000)}`],
    ['10,000 levels', `${'['.repeat(10_000)}`],
  ])(
    'with %s has a message at its place, its stories one of theirs, and the server stays up',
    async (_, text) => {
      const desk = await deskWith(storyAt('2', 'Night.'), text);
      expect((await desk.marks(path)).length).toBeGreaterThan(0);
      await desk.open('/lane/sequence.yaml', text);
      expect((await desk.marks('/lane/sequence.yaml'))[0]).toMatch(/^sequence-problem/);
      expect(desk.log).toEqual([]);
      await desk.open('/lane/spring/sequence.yaml', smallSequence);
      await desk.open('/lane/spring/a.md', storyAt('2', 'Night.'));
      expect(await desk.marks('/lane/spring/a.md')).toEqual(['untaught-spelling: Night']);
    },
    20_000,
  );

  test('with one bad line spoils only that line', async () => {
    const desk = await deskWith(
      storyAt('3', 'The night map.'),
      smallSequence.replace('targets:', 'colour: blue\ntargets:'),
    );
    expect(await desk.marks(path)).toEqual([]);
    await desk.open('/lane/sequence.yaml', smallSequence.replace('targets:', 'colour: blue\ntargets:'));
    expect(await desk.marks('/lane/sequence.yaml')).toEqual(['sequence-problem: colour']);
  });
});
