import { describe, expect, it } from 'vitest';
import { type MemoryFile, terminal } from '../support/memory-host.ts';
import { packagePhonics } from '../support/package-phonics.ts';
import { hillPicture, printSequence } from '../support/printed-story.ts';
import { readPdf } from '../support/read-pdf.ts';

const story = (title: string, body = '![A hill](hill.svg)\nThe box was red.'): string =>
  `---\ntitle: ${title}\nlesson: "2"\n---\n${body}\n`;

const shelf: Readonly<Record<string, MemoryFile>> = {
  'sequence.yaml': printSequence,
  'hill.svg': hillPicture,
  'box.md': story('The Box'),
  'more/net.md': story('The Net', '![A hill](../hill.svg)\nThe net was wet.'),
  'more/notes.md': 'No story.',
};
const call = (files: Readonly<Record<string, MemoryFile>>, ...given: readonly string[]) =>
  terminal({ ...shelf, ...files }, packagePhonics)('print', ...given);

/** What was written: path and what the document says of itself. */
function written(outcome: ReturnType<typeof call>): Readonly<Record<string, string>> {
  return Object.fromEntries(
    [...(outcome.written ?? [])].map(([path, bytes]) => {
      const { title, sides } = readPdf(bytes);
      return [path.replace('/home/writer/', ''), `${title}, ${sides.length}`];
    }),
  );
}

describe('print', () => {
  it.each([
    [['box.md'], { 'box.pdf': 'The Box, 2' }],
    [['box.md', '--book', '--layout', 'booklet'], { 'box-booklet.pdf': 'The Box, 2' }],
    [['box.md', '--teacher'], { 'box-teacher.pdf': 'The Box: teacher’s copy, 2' }],
    [['box.md', '--practice', '--parts', 'hunt'], { 'box-practice.pdf': 'The Box: practice pages, 2' }],
    [['box.md', '--cards'], { 'box-cards.pdf': 'The Box: cards, 2' }],
    [['.'], { 'box.pdf': 'The Box, 2', 'net.pdf': 'The Net, 2' }],
    [
      ['.', '--out', 'prints/all'],
      { 'prints/all/box.pdf': 'The Box, 2', 'prints/all/net.pdf': 'The Net, 2' },
    ],
    [['.', '--out', 'all.pdf'], { 'all.pdf': 'Fern Lane, 8' }],
    [['.', '--out', 'all.pdf', '--title', 'Our Book'], { 'all.pdf': 'Our Book, 8' }],
  ])('%j', (given, files) => {
    const outcome = call({}, ...given);
    expect(outcome).toMatchObject({ exitCode: 0, errors: '' });
    expect(written(outcome)).toEqual(files);
    for (const path of Object.keys(files)) expect(outcome.output).toContain(path);
  });

  it.each(['a4', 'A4'])('takes A4 when asked by %s', (paper) => {
    const [bytes = new Uint8Array()] = call({}, 'box.md', '--paper', paper).written?.values() ?? [];
    expect(readPdf(bytes).sides[0]).toMatchObject({ width: 595.276, height: 841.89 });
  });

  it('puts a chain that is really one into the cards, and no other letters', () => {
    const [bytes = new Uint8Array()] = call({}, 'box.md', '--cards').written?.values() ?? [];
    const letters = readPdf(bytes).sides[1]?.texts.map(({ text }) => text) ?? [];
    expect(letters[0]).toBe('Letter cards');
    expect(letters.length).toBeGreaterThan(6);
  });

  it('sets a frame for a picture that is to come, when asked, and says how to ask', () => {
    const story = { 'soon.md': '---\ntitle: Soon\nlesson: "2"\n---\n![A hill](art/gone.png)\nThe box.\n' };
    const refused = call(story, 'soon.md');
    expect(refused.errors).toContain(
      'With --frames an empty frame stands for a picture that is not there yet.',
    );
    const [bytes = new Uint8Array()] = call(story, 'soon.md', '--frames').written?.values() ?? [];
    expect(JSON.stringify(readPdf(bytes).structure)).toContain('An empty frame for a drawing: A hill');
  });

  it('gives the same bytes again', () => {
    const [once, again] = [1, 2].map(
      () => [...(call({}, '.', '--out', 'all.pdf').written?.values() ?? [])][0],
    );
    expect(Buffer.compare(once ?? Buffer.alloc(1), again ?? Buffer.alloc(2))).toBe(0);
  });
});

describe('print refuses, and writes nothing', () => {
  const picture = (address: string): Readonly<Record<string, MemoryFile>> => ({
    'bad.md': story('Bad', `![x](${address})\nThe box.`),
  });
  const cases: readonly (readonly [
    string,
    Readonly<Record<string, MemoryFile>>,
    readonly string[],
    string,
  ])[] = [
    [
      'a picture that is not there',
      picture('gone.png'),
      ['bad.md'],
      'bad.md:5:1  The picture “gone.png” is not there.',
    ],
    [
      'a picture outside',
      picture('../../secret.png'),
      ['bad.md'],
      'bad.md:5:1  The picture “../../secret.png” leads out of',
    ],
    ['an encoded way outside', picture('%2e%2e/%2e%2e/secret.png'), ['bad.md'], 'leads out of'],
    ['a picture by its absolute path', picture('/etc/secret.png'), ['bad.md'], 'is not a relative path'],
    [
      'a picture of the network',
      picture('https://example.org/a.png'),
      ['bad.md'],
      'is not a file beside the story',
    ],
    [
      'a picture in the text',
      picture('data:image/png;base64,AAAA'),
      ['bad.md'],
      'is not a file beside the story',
    ],
    ['a broken address', picture('%zz.png'), ['bad.md'], 'has an address that cannot be read'],
    [
      'a picture that is too large',
      { ...picture('big.png'), 'big.png': { kind: 'too-large', bytes: 60_000_000 } },
      ['bad.md'],
      'is too large: it has 60.0 MB, and at most 50.0 MB are read',
    ],
    ['a broken picture', { ...picture('b.png'), 'b.png': 'no picture' }, ['bad.md'], 'is neither a PNG'],
    [
      'letters the face lacks',
      { 'bad.md': story('Bad', 'The box ☃.') },
      ['bad.md'],
      'bad.md:5:1  Andika, the face that everything is printed in, has no “☃” (U+2603).',
    ],
    ['one bad story among good ones', picture('gone.png'), ['.', '--out', 'all.pdf'], 'bad.md:5:1'],
    [
      'a file that is there',
      { 'box.pdf': 'mine' },
      ['box.md'],
      'box.pdf is there already; --overwrite replaces it.',
    ],
    ['two stories of one name', { 'more/box.md': story('Other') }, ['.'], 'would both become box.pdf'],
    [
      'a file where a folder should be',
      { prints: 'mine' },
      ['box.md', '--out', 'prints'],
      '“prints” is a file',
    ],
    [
      'a file that would be no PDF',
      {},
      ['box.md', '--out', 'box.doc'],
      '“box.doc” ends in .doc; --out wants a file that ends in .pdf, or a folder.',
    ],
    [
      'a story without text',
      { 'bad.md': '---\ntitle: Soon\nlesson: "2"\n---\n# Soon\n' },
      ['bad.md'],
      'bad.md:3:9  There is nothing to print yet: the story has no text and no picture.',
    ],
    ['a story without its sequence', { 'sequence.yaml': 'lessons: []' }, ['box.md'], 'has no lesson “2”'],
    [
      'a sequence with an error',
      { 'sequence.yaml': printSequence.replace('sh as in ship', 'sh as in cat') },
      ['box.md'],
      'Mend the sequence first',
    ],
    ['a folder without stories', {}, ['more/notes.md'], 'This is not a story'],
    [
      'two things at once',
      {},
      ['box.md', '--book', '--cards'],
      '--book and --cards cannot be had in one file; call twice.',
    ],
    ['a booklet of cards', {}, ['box.md', '--cards', '--layout', 'booklet'], 'Only a book can be a booklet.'],
    [
      'a practice page there is not',
      {},
      ['box.md', '--practice', '--parts', 'hunt,maze'],
      '“maze” is not a practice page',
    ],
    ['parts of a book', {}, ['box.md', '--parts', 'hunt'], '--parts goes with --practice.'],
  ];
  it.each(cases)('%s', (_name, files, given, message) => {
    const outcome = call(files, ...given);
    expect(outcome.errors).toContain(message);
    expect(outcome).toMatchObject({ exitCode: 2, output: '' });
    expect(outcome.written).toBeUndefined();
  });

  it('but replaces a file when asked', () => {
    expect(call({ 'box.pdf': 'mine' }, 'box.md', '--overwrite')).toMatchObject({ exitCode: 0 });
  });
});
