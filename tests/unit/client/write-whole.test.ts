import { expect, test } from 'vitest';
import { writeWhole } from '../../../client/src/workshop/write-whole.ts';

const page = Uint8Array.of(1, 2, 3, 4);

/** A disk of files by name; a full one takes half of what is written and fails. */
function disk(names: readonly string[], isFull = false) {
  const held = new Map<string, Uint8Array>(names.map((name) => [name, Uint8Array.of(9)]));
  return {
    held,
    exists: async (name: string) => held.has(name),
    write: async (name: string, bytes: Uint8Array) => {
      held.set(name, isFull ? bytes.slice(0, 2) : bytes);
      if (isFull) throw new Error('The disk is full.');
    },
    remove: async (name: string) => {
      held.delete(name);
    },
  };
}

test.each([
  ['a new file is written, and nobody is asked', [], false, true, 0, page],
  ['a file that is there stays when the answer is no', ['a.pdf'], false, false, 1, Uint8Array.of(9)],
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
  expect(files.held.get('a.pdf')).toEqual(after);
});

test('a write that fails half-way leaves no part of a new file, and is told', async () => {
  const files = disk([], true);
  await expect(writeWhole(files, 'a.pdf', page, async () => true)).rejects.toThrow('The disk is full.');
  expect([...files.held.keys()]).toEqual([]);
});
