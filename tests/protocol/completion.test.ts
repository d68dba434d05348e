import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { packagePhonics } from '../support/package-phonics.ts';
import { smallSequence, storyAt } from '../support/small-lane.ts';
import { type Desk, sitDown } from '../support/writing-desk.ts';

const path = '/lane/nap.md';
const sequence = smallSequence
  .replace('repeats: 0', 'repeats: 2')
  .replace('title: long i', 'title: long i\n    high-frequency words: [naps]');

async function sit(body: string, lesson = '3'): Promise<Desk> {
  const desk = await sitDown({ phonics: packagePhonics, files: { '/lane/sequence.yaml': sequence } });
  await desk.open(path, storyAt(lesson, body));
  return desk;
}

const labels = async (desk: Desk, behind: string, at = path): Promise<readonly string[]> =>
  (await desk.completions(at, behind)).map(({ label }) => label);

describe('in the text', () => {
  test('what is still missing comes first, then what is new, then what can be read, each with its sounds', async () => {
    const items = await (await sit('The man n')).completions(path, 'The man n');
    expect(items.slice(0, 3).map(({ label, detail }) => `${label}: ${detail}`)).toEqual([
      'naps: n-a-p-s năps · still missing',
      'night: n-igh-t nīt · practises what is new',
      'nigh: n-igh nī · practises what is new',
    ]);
    const rest = items.filter(({ detail }) => detail?.includes(' · ') === false);
    expect(rest.map(({ label }) => label)).toEqual(expect.arrayContaining(['nap', 'nip', 'nit']));
    // The client sorts by this, whatever it makes of the labels.
    expect(items.map(({ sortText }) => sortText)).toEqual(items.map(({ sortText }) => sortText).sort());
  });

  test('a word takes the place of its letters', async () => {
    const [first] = await (await sit('The man n')).completions(path, 'The man n');
    const start = { line: 3, character: 8 };
    expect(first?.textEdit).toEqual({ range: { start, end: { line: 3, character: 9 } }, newText: 'naps' });
  });

  test.each([
    ['a note for the teacher', '> Ask: n', '> Ask: n'],
    ['a note to the illustrator', '![A man n](a.png)\nThe man.', '![A man n'],
    ['code', 'The `n` man.', 'The `n'],
    ['a comment', 'The man. <!-- n -->', '<!-- n'],
  ])('nothing in %s', async (_, body, behind) => {
    expect(await labels(await sit(body), behind)).toEqual([]);
  });

  test('every word that is offered can be read in the story', async () => {
    await fc.assert(
      fc.asyncProperty(fc.stringMatching(/^[a-z]{1,2}$/), async (letters) => {
        const desk = await sit(`The man ${letters}`);
        const offered = await labels(desk, `The man ${letters}`);
        await desk.edit(path, `The man ${letters}`, `The man sat. ${offered.join(' ')}`);
        const found = (await desk.marks(path)).filter((mark) => /^(untaught|guessed)/.test(mark));
        expect(found, letters).toEqual([]);
        await desk.close(path);
      }),
      { numRuns: 30 },
    );
  });
});

describe('in the front matter', () => {
  test('the keys that are not there yet', async () => {
    const desk = await sitDown({ files: { '/lane/sequence.yaml': sequence } });
    await desk.open(path, '---\nlesson: "3"\n\n---\nThe man.\n');
    expect(await labels(desk, 'lesson: "3"\n')).toEqual(
      expect.arrayContaining(['title', 'names', 'story words']),
    );
    expect(await labels(desk, 'lesson: "3"\n')).not.toContain('lesson');
  });

  test('the lessons of the sequence', async () => {
    const desk = await sitDown({ files: { '/lane/sequence.yaml': sequence } });
    await desk.open(path, '---\nlesson: \n---\nThe man.\n');
    expect(await labels(desk, 'lesson: ')).toEqual(['1', '2', '3', '4']);
  });
});

describe('in a sequence', () => {
  test.each([
    [
      'spellings with their key words, but none that is taught',
      'spellings: [',
      'sh as in ship',
      'm as in mud',
    ],
    ['high-frequency words that no lesson teaches', 'high-frequency words: [sa', 'said', 'naps'],
    ['keys of a lesson', '    ', 'endings', 'targets of all'],
  ])('%s', async (_, line, offered, absent) => {
    const desk = await sitDown({ phonics: packagePhonics });
    const written = `${sequence}  - name: "5"\n    ${line.trimStart()}`;
    await desk.open('/lane/sequence.yaml', written, 'yaml');
    const found = await labels(desk, written, '/lane/sequence.yaml');
    expect(found).toContain(offered);
    expect(found).not.toContain(absent);
  });
});
