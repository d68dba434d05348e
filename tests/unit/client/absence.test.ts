import { expect, test } from 'vitest';
import { absenceModel } from '../../../client/src/gauge/absence.ts';
import type { GaugeState } from '../../../client/src/gauge/messages.ts';
import { countsOfKinds, gaugeOfCounts } from '../../support/gauge.ts';

const noGauge = (reason: (GaugeState & { kind: 'no-gauge' })['reason']): GaugeState => ({
  kind: 'no-gauge',
  reason,
  message: 'What the server said.',
});

test.each<[GaugeState, string, boolean, readonly string[]]>([
  [{ kind: 'no-file' }, 'No story open', true, ['new-story', 'new-sequence', 'samples']],
  [{ kind: 'starting' }, 'Reading the story', false, []],
  [{ kind: 'stopped' }, 'Battledore stopped', false, ['restart']],
  [noGauge('not-a-story'), 'Not a story yet', true, ['new-story']],
  [noGauge('no-sequence'), 'No sequence found', true, ['new-sequence']],
  [noGauge('no-such-lesson'), 'No such lesson', false, []],
  [noGauge('too-large'), 'Too large to check', false, ['settings']],
])('%j says "%s"', (state, title, hasExample, messages) => {
  const model = absenceModel(state);
  expect(model?.title).toBe(title);
  expect(model?.example !== '').toBe(hasExample);
  expect(model?.buttons.map(({ message }) => message)).toEqual(messages);
});

test.each(['not-a-story', 'no-sequence', 'no-such-lesson', 'too-large'] as const)(
  'what the server said stands on the page: %s',
  (reason) => {
    expect(absenceModel(noGauge(reason))?.paragraphs).toContain('What the server said.');
  },
);

test('a sequence with problems that lacks the lesson can be opened', () => {
  const range = { start: { line: 4, character: 0 }, end: { line: 4, character: 3 } };
  const sequenceProblems = { uri: 'memory:/sequence.yaml', count: 1, errors: 1, range };
  const state = { kind: 'no-gauge', reason: 'no-such-lesson', message: 'No.', sequenceProblems } as const;
  expect(absenceModel(state)?.buttons).toEqual([{ label: 'Open the Sequence', message: 'sequence-problem' }]);
});

test('a gauge needs no such page', () => {
  expect(absenceModel({ kind: 'gauge', gauge: gaugeOfCounts(countsOfKinds(5)) })).toBeUndefined();
});
