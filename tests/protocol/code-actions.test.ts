import { afterEach, describe, expect, test } from 'vitest';
import { packageThesaurus } from '../support/fixes.ts';
import { packagePhonics } from '../support/package-phonics.ts';
import { type Desk, type DeskSettings, sitDown, standUp, uriOf } from '../support/writing-desk.ts';

const sequence = `# Ours.
title: Lane
targets: { readable: 0, sentence: 8, page: 50, practice: 0, repeats: 0 }
lessons:
  - name: "1" # first
    spellings: [m as in mud, s as in sun, t as in top, a as in map, p as in pan, n as in nap, i as in sit, h as in hat,
      o as in top, d as in dot, e as in bed, r as in rug, g as in gap, k as in kit, c as in cat, b as in bat, u as in tub]
    # words
    high-frequency words: [the, a, said, on, she]
  - name: "2"
    spellings: [igh as in light]
`;
const front = '---\nlesson: "1"\nnames: [Kim]\n---\n';

const desks: Desk[] = [];
afterEach(() => {
  for (const desk of desks.splice(0)) standUp(desk);
});

async function writing(body: string, given: DeskSettings & { head?: string } = {}): Promise<Desk> {
  const desk = await sitDown({
    files: { '/lane/sequence.yaml': sequence },
    phonics: packagePhonics,
    thesaurus: async () => packageThesaurus,
    ...given,
  });
  desks.push(desk);
  await desk.open('/lane/a.md', `${given.head ?? front}${body}\n`);
  return desk;
}

async function titles(desk: Desk, on: string): Promise<readonly string[]> {
  return (await desk.fixes('/lane/a.md', on)).map(({ title }) => title);
}

async function fixed(desk: Desk, on: string, title: RegExp, path = '/lane/a.md'): Promise<string> {
  const action = (await desk.fixes('/lane/a.md', on)).find((each) => title.test(each.title));
  if (action === undefined) throw new Error(`No fix is called ${title}.`);
  return desk.after(path, action);
}

describe('a word that is marked', () => {
  test('can be replaced, declared and taught', async () => {
    const desk = await writing('A man ran in the night.');
    expect(await titles(desk, 'night')).toEqual([
      'Replace with “dusk”',
      'Replace with “sunset”',
      'Declare “night” a story word (1 of at most 3)',
      'Teach “night” in lesson 1 as a high-frequency word',
    ]);
  });

  test('a story word too many is said to be one', async () => {
    const head =
      '---\nlesson: "1"\nstory words: { fig: "a fruit", fog: "a cloud", elf: "a small man" }\n---\n';
    const desk = await writing('A man ran in the night.', { head });
    expect(await titles(desk, 'night')).toContain('Declare “night” a story word (more than the 3 wanted)');
  });

  test.each([
    ['---\nlesson: "1"\n---\n', { line: 3, character: 9 }],
    ['---\nlesson: "1"\nstory words:\n  fig: a fruit\n---\n', { line: 4, character: 9 }],
    ['---\nlesson: "1"\nstory words: { fig: a fruit }\n---\n', { line: 2, character: 37 }],
  ])('the caret goes where the meaning of a story word is to be written: %j', async (head, place) => {
    const desk = await writing('A man ran in the night.', { head, goesToPlaces: true });
    const action = (await desk.fixes('/lane/a.md', 'night')).find(({ title }) =>
      title.includes('story word'),
    );
    expect(action?.command?.command).toBe('battledore.goTo');
    expect(action?.command?.arguments).toEqual([uriOf('/lane/a.md'), place]);
    const plain = await writing('A man ran in the night.', { head });
    expect((await plain.fixes('/lane/a.md', 'night')).every(({ command }) => command === undefined)).toBe(
      true,
    );
  });

  test('its article changes with it', async () => {
    const desk = await writing('Kim had an enormous pan.');
    expect(await fixed(desk, 'enormous', /^Replace with “a big”/)).toBe(`${front}Kim had a big pan.\n`);
  });

  test('the front matter keeps its look', async () => {
    const head = '---\n# mine\nlesson: "1" # first\nnames: [Kim] # the girl\n---\n';
    const desk = await writing('Kim ran in the night. On the mat sat Phil.', { head });
    expect(await fixed(desk, 'night', /story word/)).toContain(
      'lesson: "1" # first\nnames: [Kim] # the girl\nstory words:\n  night: \n---\n',
    );
    expect(await fixed(desk, 'Phil', /a name/)).toContain('names: [Kim, Phil] # the girl\n---');
  });

  test('the sequence keeps its comments, and a file that is not open has no version', async () => {
    const desk = await writing('Kim ran in the night.');
    expect(await fixed(desk, 'night', /^Teach/, '/lane/sequence.yaml')).toBe(
      sequence.replace('said, on, she]', 'said, on, she, night]'),
    );
    const teach = (await desk.fixes('/lane/a.md', 'night')).find(({ title }) => title.startsWith('Teach'));
    expect(teach?.command).toBeUndefined();
    expect(teach?.edit?.documentChanges).toMatchObject([
      { textDocument: { uri: uriOf('/lane/sequence.yaml'), version: null } },
    ]);
  });

  test('a change of the sequence is told to a client that can show it', async () => {
    const desk = await writing('Kim ran in the night.', { goesToPlaces: true });
    const teach = (await desk.fixes('/lane/a.md', 'night')).find(({ title }) => title.startsWith('Teach'));
    expect(teach?.command).toMatchObject({
      command: 'battledore.changedElsewhere',
      arguments: [uriOf('/lane/sequence.yaml'), { line: expect.any(Number), character: expect.any(Number) }],
    });
  });

  test('a sequence that is open is edited at its version, as it stands there', async () => {
    const desk = await writing('Kim ran in the night.');
    await desk.open('/lane/sequence.yaml', sequence);
    await desk.edit('/lane/sequence.yaml', 'said, on', 'said, of, on');
    expect(await fixed(desk, 'night', /^Teach/, '/lane/sequence.yaml')).toContain(
      'said, of, on, she, night]',
    );
    const teach = (await desk.fixes('/lane/a.md', 'night')).find(({ title }) => title.startsWith('Teach'));
    expect(teach?.edit?.documentChanges).toMatchObject([{ textDocument: { version: 2 } }]);
  });

  test('a word that a later lesson teaches whole is not taught twice', async () => {
    const desk = await writing('Kim ran in the night.', {
      files: { '/lane/sequence.yaml': `${sequence}    high-frequency words: [night]\n` },
    });
    expect((await titles(desk, 'night')).filter((title) => title.startsWith('Teach'))).toEqual([]);
  });
});

describe('a long sentence', () => {
  test('is split, surely where both halves are short enough', async () => {
    const desk = await writing('Kim ran on the mat and she sat in the hut.');
    const [split] = await desk.fixes('/lane/a.md', 'she sat in');
    // The mark stands where the sentence becomes too long.
    expect(split).toBeUndefined();
    const [marked] = await desk.fixes('/lane/a.md', 'in the hut');
    expect(marked?.title).toBe('Split: Kim ran on the mat. She sat in the hut.');
    expect(marked?.isPreferred).toBe(true);
    expect(marked && desk.after('/lane/a.md', marked)).toBe(
      `${front}Kim ran on the mat. She sat in the hut.\n`,
    );
  });
});

describe('a high-frequency word that is missing', () => {
  test('can stand for a word of near meaning', async () => {
    const desk = await writing('"Sit!" exclaimed the man.\n\n---\n\nThe cat sat.', {
      files: { '/lane/sequence.yaml': sequence.replace('repeats: 0', 'repeats: 1') },
      head: '---\nlesson: "1"\n---\n',
    });
    const fixes = await desk.fixes('/lane/a.md', '"1"');
    expect(fixes.map(({ title }) => title)).toEqual(['Use “said” for “exclaimed” on page 1']);
    expect(fixes[0] && desk.after('/lane/a.md', fixes[0])).toContain('"Sit!" said the man.');
  });
});

describe('a story word that is not used', () => {
  test('is taken out', async () => {
    const head = '---\nlesson: "1"\nstory words:\n  pond: a lake # small\n  yarn: wool\n---\n';
    const desk = await writing('A man ran on the yarn.', { head });
    const [fix] = await desk.fixes('/lane/a.md', 'pond');
    expect(fix).toMatchObject({ title: 'Remove the story word “pond”', isPreferred: true });
    expect(await fixed(desk, 'pond', /Remove/)).toBe(
      '---\nlesson: "1"\nstory words:\n  yarn: wool\n---\nA man ran on the yarn.\n',
    );
  });
});

describe('the answer', () => {
  test('is for the text as it stands, at its version', async () => {
    const desk = await writing('Kim ran in the hut.');
    desk.send('/lane/a.md', 'the hut', 'the night');
    const actions = await desk.fixes('/lane/a.md', 'night');
    expect(actions.length).toBeGreaterThan(0);
    for (const { edit } of actions.filter(({ title }) => !title.startsWith('Teach'))) {
      expect(edit?.documentChanges).toMatchObject([
        { textDocument: { uri: uriOf('/lane/a.md'), version: 2 } },
      ]);
    }
  });

  test('says which diagnostics it is for, of those that still stand', async () => {
    const desk = await writing('Kim ran in the night.');
    const diagnostics = [...(await desk.diagnostics('/lane/a.md'))];
    const [action] = await desk.fixes('/lane/a.md', 'night', { diagnostics });
    expect(action?.diagnostics).toEqual(diagnostics.filter(({ code }) => code === 'untaught-spelling'));
    const moved = diagnostics.map((each) => ({ ...each, code: 'long-page' }));
    const [other] = await desk.fixes('/lane/a.md', 'night', { diagnostics: moved });
    expect(other?.diagnostics).toBeUndefined();
  });

  test('has quick fixes only, and none when others are asked for', async () => {
    const desk = await writing('Kim ran in the night.');
    const actions = await desk.fixes('/lane/a.md', 'night', { only: ['quickfix'] });
    expect(new Set(actions.map(({ kind }) => kind))).toEqual(new Set(['quickfix']));
    expect(await desk.fixes('/lane/a.md', 'night', { only: ['refactor'] })).toEqual([]);
    expect(await desk.fixes('/lane/a.md', 'ran')).toEqual([]);
  });

  test('is without versions for a client that takes none', async () => {
    const desk = await writing('Kim ran in the night.', { takesVersions: false });
    const [action] = await desk.fixes('/lane/a.md', 'night');
    expect(Object.keys(action?.edit?.changes ?? {})).toEqual([uriOf('/lane/a.md')]);
  });

  test('leaves out other words when they cannot be read, says so once, and tries again', async () => {
    let calls = 0;
    const desk = await writing('Kim had an enormous pan.', {
      thesaurus: async () => {
        if (++calls === 1) throw new Error('The disk is gone.');
        return packageThesaurus;
      },
    });
    expect((await titles(desk, 'enormous')).some((title) => title.startsWith('Replace'))).toBe(false);
    expect((await titles(desk, 'enormous')).some((title) => title.startsWith('Replace'))).toBe(true);
    expect(desk.log.join('\n')).toContain('The disk is gone.');
    expect(desk.log).toHaveLength(1);
  });

  test('reads no words by meaning before it is asked for', async () => {
    let calls = 0;
    await writing('Kim ran in the night.', {
      thesaurus: async () => {
        calls++;
        return packageThesaurus;
      },
    });
    expect(calls).toBe(0);
  });
});
