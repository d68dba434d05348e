import { expect, test } from 'vitest';
import type { GaugeState } from '../../../client/src/gauge/messages.ts';
import { statusText } from '../../../client/src/gauge/status-text.ts';
import type { Gauge } from '../../../server/src/editor/protocol.ts';
import { countsOfKinds, gaugeOfCounts } from '../../support/gauge.ts';

const statusOf = (gauge: Gauge) => statusText({ kind: 'gauge', gauge });

test.each([
  ['a story that reaches everything', countsOfKinds(80, 16, 4), {}, '$(check) 96.0 % readable'],
  ['exactly at the target', countsOfKinds(19, 0, 1), {}, '$(check) 95.0 % readable'],
  [
    'just under the target',
    countsOfKinds(9499, 0, 501),
    { findings: 1 },
    '$(arrow-down) 94.9 % readable, under 95 %',
  ],
  [
    'readable, but something else is short',
    countsOfKinds(20),
    { passes: false, findings: 1 },
    '$(book) 100.0 % readable, 1 finding',
  ],
  [
    'readable, but several things are short',
    countsOfKinds(20),
    { passes: false, findings: 3 },
    '$(book) 100.0 % readable, 3 findings',
  ],
  ['a story without a word', countsOfKinds(0), {}, '$(book) No words yet'],
])('%s', (_, counts, changes, text) => {
  expect(statusOf(gaugeOfCounts(counts, changes))?.text).toBe(text);
});

test('a screen reader hears the state in words', () => {
  expect(statusOf(gaugeOfCounts(countsOfKinds(9, 0, 1)))?.label).toBe(
    '90.0 % of the words are readable, under the target of 95 %',
  );
  expect(statusOf(gaugeOfCounts(countsOfKinds(10)))?.label).toBe(
    '100.0 % of the words are readable, the target of 95 % is reached',
  );
});

test('the tooltip gives the counts behind the figure', () => {
  const tooltip = statusOf(gaugeOfCounts(countsOfKinds(70, 15, 5, 3, 7), { findings: 4 }))?.tooltip;
  expect(tooltip).toEqual({
    title: 'The Pond, lesson 12: long i',
    rows: [
      { label: 'Decodable', count: '70', share: '70.0 %' },
      { label: 'High-frequency', count: '15', share: '15.0 %' },
      { label: 'Names', count: '5', share: '5.0 %' },
      { label: 'Story words', count: '3', share: '3.0 %' },
      { label: 'Not taught yet', count: '7', share: '7.0 %' },
      { label: 'Running words', count: '100', share: '' },
    ],
    lines: ['Readable: decodable and high-frequency words, 85.0 %. Target 95 %.', '4 findings in Problems.'],
  });
});

test.each<[string, GaugeState, string | undefined]>([
  ['no file', { kind: 'no-file' }, undefined],
  ['the server has not answered yet', { kind: 'starting' }, undefined],
  ['not a story', { kind: 'no-gauge', reason: 'not-a-story', message: 'No lesson.' }, undefined],
  ['no sequence', { kind: 'no-gauge', reason: 'no-sequence', message: 'None found.' }, '$(book) No sequence'],
  [
    'a lesson that is not there',
    { kind: 'no-gauge', reason: 'no-such-lesson', message: 'There is no lesson 99.' },
    '$(book) No such lesson',
  ],
  [
    'a file too large',
    { kind: 'no-gauge', reason: 'too-large', message: 'Too large.' },
    '$(book) Too large to check',
  ],
  ['the server stopped', { kind: 'stopped' }, '$(warning) Battledore stopped'],
])('without a gauge: %s', (_, state, text) => {
  expect(statusText(state)?.text).toBe(text);
});

test('the reason is in the tooltip, and a click restarts only what stopped', () => {
  const lessonless = statusText({ kind: 'no-gauge', reason: 'no-such-lesson', message: 'No lesson 99.' });
  expect(lessonless?.tooltip.title).toBe('No lesson 99.');
  expect(lessonless?.restarts).toBe(false);
  expect(statusText({ kind: 'stopped' })?.restarts).toBe(true);
});
