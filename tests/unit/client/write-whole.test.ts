import { expect, test } from 'vitest';
import { writeWhole } from '../../../client/src/workshop/write-whole.ts';

const page = Uint8Array.of(1, 2, 3, 4);
const old = Uint8Array.of(9);

/** A disk of files by name. A full one takes half of what is written and fails; a locked one moves nothing. */
function disk(names: readonly string[], fault?: 'full' | 'locked') {
  const held = new Map<string, Uint8Array>(names.map((name) => [name, old]));
  return {
    held,
    exists: async (name: string) => held.has(name),
    write: async (name: string, bytes: Uint8Array) => {
      held.set(name, fault === 'full' ? bytes.slice(0, 2) : bytes);
      if (fault === 'full') throw new Error('The disk is full.');
    },
    move: async (from: string, to: string, replaces: boolean) => {
      if (fault === 'locked') throw new Error('Another program has the file.');
      if (held.has(to) && !replaces) throw new Error('The file is there.');
      held.set(to, held.get(from) ?? Uint8Array.of());
      held.delete(from);
    },
    remove: async (name: string) => {
      held.delete(name);
    },
    beside: (name: string) => `.${name}.unfinished`,
  };
}

test.each([
  ['a new file is written, and nobody is asked', [], false, true, 0, page],
  ['a file that is there stays when the answer is no', ['a.pdf'], false, false, 1, old],
  ['a file that is there is replaced when the answer is yes', ['a.pdf'], true, true, 1, page],
])('%s', async (_, names, mayReplace, isWritten, questions, after) => {
  const files = disk(names);
  let asked = 0;
  const answer = async () => {
    asked++;
    return mayReplace;
  };
  expect(await writeWhole(files, 'a.pdf', page, answer)).toBe(isWritten);
  expect(asked).toBe(questions);
  expect([...files.held]).toEqual([['a.pdf', after]]);
});

test.each([
  ['a full disk leaves nothing of a new file', [], 'full', 'The disk is full.'],
  ['a full disk leaves an old file as it was', ['a.pdf'], 'full', 'The disk is full.'],
  [
    'a locked file stays as it was, and nothing beside it',
    ['a.pdf'],
    'locked',
    'Another program has the file.',
  ],
] as const)('%s, and the failure is told', async (_, names, fault, message) => {
  const files = disk(names, fault);
  await expect(writeWhole(files, 'a.pdf', page, async () => true)).rejects.toThrow(message);
  expect([...files.held]).toEqual(names.map((name) => [name, old]));
});

test('a file that came while the page was written is not replaced', async () => {
  const files = disk([]);
  const { write } = files;
  files.write = async (name, bytes) => {
    await write(name, bytes);
    files.held.set('a.pdf', old);
  };
  await expect(writeWhole(files, 'a.pdf', page, async () => true)).rejects.toThrow('The file is there.');
  expect([...files.held]).toEqual([['a.pdf', old]]);
});
