import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { GaugeParams } from '../../server/src/editor/protocol.ts';
import { smallSequence, storyAt } from '../support/small-lane.ts';
import { type Desk, settled, sitDown, standUp } from '../support/writing-desk.ts';

const story = '/lane/spring/a.md';
const sequence = '/lane/sequence.yaml';

/** An edit: where in the text, in thousandths of its length, how many signs go, and what comes instead. */
interface Edit {
  readonly file: string;
  readonly at: number;
  readonly cut: number;
  readonly text: string;
}

const edit: fc.Arbitrary<Edit> = fc.record({
  file: fc.constantFrom(story, sequence),
  at: fc.nat(999),
  cut: fc.nat(12),
  text: fc.constantFrom(
    '',
    'n',
    ' night ',
    '.',
    '\n\n---\n\n',
    '\n',
    '# ',
    '> ',
    '![x](y.png) ',
    '"',
    ': ',
    '  - ',
    '\r\n',
    '😀',
  ),
});
const other = fc.constantFrom(
  'close sequence',
  'open sequence',
  'vanish',
  'return',
  'pause',
  'nearer',
  'no nearer',
);
const day = fc.array(fc.oneof({ weight: 4, arbitrary: edit }, { weight: 1, arbitrary: other }), {
  maxLength: 25,
});

test.each(['pull', 'push'] as const)(
  'after any day of edits the diagnostics are those of a server that has just started (%s)',
  async (client) => {
    await fc.assert(
      fc.asyncProperty(day, async (steps) => {
        const desk = await sitDown({ client, files: { [sequence]: smallSequence } });
        await desk.open(story, storyAt('2', '# The Map\n\nThe night map sat.\n\n---\n\nTap. Light it!'));
        for (const step of steps) await take(desk, step);
        await settled();
        await desk.clock.pass(1000);
        const fresh = await freshDesk(desk, client);
        expect(await desk.diagnostics(story)).toEqual(await fresh.diagnostics(story));
        expect(withoutVersion(desk.lastGauge(story))).toEqual(withoutVersion(fresh.lastGauge(story)));
        expect(desk.log).toEqual([]);
        standUp(desk);
        standUp(fresh);
      }),
      { numRuns: 60 },
    );
  },
  120_000,
);

async function take(desk: Desk, step: Edit | string): Promise<void> {
  if (typeof step !== 'string') {
    const text = desk.textOf(step.file);
    if (text === undefined) return;
    const start = Math.floor((text.length * step.at) / 1000);
    desk.replace(step.file, start, Math.min(text.length, start + step.cut), step.text);
    return;
  }
  const nearer = '/lane/spring/sequence.yaml';
  switch (step) {
    case 'close sequence':
      if (desk.textOf(sequence) !== undefined) await desk.close(sequence);
      return;
    case 'open sequence':
      if (desk.textOf(sequence) === undefined)
        await desk.open(sequence, desk.files.get(sequence) ?? smallSequence);
      return;
    case 'vanish':
      return desk.changeFile(sequence, null);
    case 'return':
      return desk.changeFile(sequence, smallSequence);
    case 'nearer':
      return desk.changeFile(nearer, smallSequence.replace('igh as in light', 'oo as in moon'));
    case 'no nearer':
      return desk.changeFile(nearer, null);
    default:
      return desk.clock.pass(1000);
  }
}

/** A gauge, or the reason why there is none, apart from the version it is of. */
function withoutVersion(params: GaugeParams | undefined): unknown {
  if (params === undefined) return undefined;
  return 'gauge' in params ? { ...params.gauge, version: 0 } : { ...params, version: 0 };
}

/** A new server in front of the same texts and files. */
async function freshDesk(desk: Desk, client: 'pull' | 'push'): Promise<Desk> {
  const fresh = await sitDown({ client, files: Object.fromEntries(desk.files) });
  for (const file of [sequence, story]) {
    const text = desk.textOf(file);
    if (text !== undefined) await fresh.open(file, text);
  }
  return fresh;
}
