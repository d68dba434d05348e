import { expect, test } from 'vitest';
import { packagePhonics } from '../support/package-phonics.ts';
import { sitDown } from '../support/writing-desk.ts';

const path = '/lane/sequence.yaml';
const sequence = `lessons:
  - name: "1"
    title: first
    spellings: [m as in mud, a as in map, t as in top, s as in sun, p as in pan, n as in nap]
  - name: "2"
    title: second
    spellings: [z as in zip]
`;
const lean = ['sequence-problem: "2"'];

test.each(['push', 'pull'] as const)(
  'a lesson that opens few words is marked once the writer rests (%s)',
  async (client) => {
    const desk = await sitDown({ client, phonics: packagePhonics });
    await desk.open(path, sequence);
    expect(await desk.marks(path)).toEqual([]);
    await desk.clock.pass(1000);
    expect(await desk.marks(path)).toEqual(lean);
  },
);

test('the mark stays while other lines are written, and goes with its reason', async () => {
  const desk = await sitDown({ client: 'pull', phonics: packagePhonics });
  await desk.open(path, sequence);
  await desk.marks(path);
  await desk.clock.pass(1000);
  await desk.edit(path, 'title: second', 'title: the second');
  expect(await desk.marks(path)).toEqual(lean);
  await desk.edit(path, 'z as in zip', 'z as in zip, d as in dog, b as in bat');
  expect(await desk.marks(path)).toEqual([]);
  await desk.clock.pass(1000);
  expect(await desk.marks(path)).toEqual([]);
});

test('a sequence that is closed before it is counted is left alone', async () => {
  const desk = await sitDown({ phonics: packagePhonics });
  await desk.open(path, sequence);
  await desk.close(path);
  await desk.clock.pass(1000);
  expect(await desk.marks(path).catch(() => 'closed')).toBe('closed');
  expect(desk.server.remembered).toBe(0);
});
