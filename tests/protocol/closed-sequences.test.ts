import { describe, expect, test } from 'vitest';
import { smallSequence, storyAt } from '../support/small-lane.ts';
import { type Desk, sitDown, uriOf } from '../support/writing-desk.ts';

const path = '/lane/sequence.yaml';
const brokenSequence = smallSequence.replace('- name: "4"', '- name: "4"\n    teachers: [Kim]');

/** How many problems the client's list has for the sequence, and how often it was sent. */
const shown = ({ published }: Desk): readonly number[] =>
  published.filter(({ uri }) => uri === uriOf(path)).map(({ diagnostics }) => diagnostics.length);

describe.each(['push', 'pull'] as const)(
  'the sequence of an open story, for a client that does %s',
  (client) => {
    const sit = (text = brokenSequence) => sitDown({ client, files: { [path]: text } });

    test('shows its problems though it is not open', async () => {
      const desk = await sit();
      await desk.open('/lane/a.md', storyAt('1', 'The man sat.'));
      const [sent] = desk.published.filter(({ uri }) => uri === uriOf(path));
      expect(sent?.diagnostics).toMatchObject([
        { code: 'sequence-problem', message: expect.stringContaining('teachers') },
      ]);
      await desk.edit('/lane/a.md', 'sat', 'sit');
      await desk.open('/lane/b.md', storyAt('2', 'The man sat.'));
      expect(shown(desk)).toEqual([1]);
    });

    test('says nothing when it has none', async () => {
      const desk = await sit(smallSequence);
      await desk.open('/lane/a.md', storyAt('1', 'The man sat.'));
      expect(shown(desk)).toEqual([]);
      expect(desk.lastGauge('/lane/a.md')).not.toHaveProperty('gauge.sequenceProblems');
    });

    test('shows a hundred of very many', async () => {
      const desk = await sit(smallSequence + '  - name: "4"\n'.repeat(150));
      await desk.open('/lane/a.md', storyAt('1', 'The man sat.'));
      expect(shown(desk)).toEqual([100]);
      expect(desk.lastGauge('/lane/a.md')).toMatchObject({ gauge: { sequenceProblems: { count: 150 } } });
    });

    test('takes them away when they are mended on disk', async () => {
      const desk = await sit();
      await desk.open('/lane/a.md', storyAt('1', 'The man sat.'));
      await desk.changeFile(path, smallSequence);
      expect(shown(desk)).toEqual([1, 0]);
      await desk.clock.pass(100);
      expect(desk.lastGauge('/lane/a.md')).not.toHaveProperty('gauge.sequenceProblems');
    });

    test('takes them away with the last story that follows it', async () => {
      const desk = await sit();
      await desk.open('/lane/a.md', storyAt('1', 'The man sat.'));
      await desk.open('/lane/b.md', storyAt('1', 'The man sat.'));
      await desk.close('/lane/a.md');
      expect(shown(desk)).toEqual([1]);
      await desk.edit('/lane/b.md', 'lesson: "1"', 'note: "1"');
      expect(shown(desk)).toEqual([1, 0]);
      expect(desk.server.remembered).toBeGreaterThan(0);
    });

    test('leaves them to the usual way while it is open, and shows them again after', async () => {
      const desk = await sit();
      await desk.open('/lane/a.md', storyAt('1', 'The man sat.'));
      await desk.open(path, brokenSequence);
      expect(shown(desk)).toEqual(client === 'pull' ? [1, 0] : [1, 0, 1]);
      await desk.close(path);
      expect(shown(desk).at(-1)).toBe(1);
    });

    test('is named in the gauge, with the place of its gravest problem', async () => {
      const desk = await sit(brokenSequence.replace('igh as in light', 'igh as in map'));
      await desk.open('/lane/a.md', storyAt('1', 'The man sat.'));
      expect(desk.lastGauge('/lane/a.md')).toMatchObject({
        gauge: {
          sequenceProblems: { uri: uriOf(path), count: 2, errors: 1, range: { start: { line: 10 } } },
        },
      });
    });

    test('is named where it lacks the lesson', async () => {
      const desk = await sit();
      await desk.open('/lane/a.md', storyAt('7', 'The man sat.'));
      expect(desk.lastGauge('/lane/a.md')).toMatchObject({
        reason: 'no-such-lesson',
        sequenceProblems: { count: 1 },
      });
    });
  },
);
