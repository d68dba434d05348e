import { expect, test } from 'vitest';
import { PlaceCycle } from '../../../client/src/gauge/place-cycle.ts';
import { rangesOn } from '../../support/gauge.ts';

/** The lines to which the activations lead, one after the other. */
function linesOf(activations: readonly (readonly [key: string, lines: readonly number[]])[]) {
  const cycle = new PlaceCycle();
  return activations.map(([key, lines]) => cycle.next(key, rangesOn(...lines))?.range.start.line);
}

test.each<[string, Parameters<typeof linesOf>[0], readonly (number | undefined)[]]>([
  [
    'goes round',
    [
      ['said', [3, 5]],
      ['said', [3, 5]],
      ['said', [3, 5]],
    ],
    [3, 5, 3],
  ],
  [
    'begins anew at another item',
    [
      ['said', [3, 5]],
      ['what', [4, 8]],
      ['said', [3, 5]],
    ],
    [3, 4, 3],
  ],
  [
    'goes on from the start when places have gone',
    [
      ['said', [3, 5]],
      ['said', [3]],
    ],
    [3, 3],
  ],
  ['has nowhere to go', [['said', []]], [undefined]],
])('%s', (_, activations, lines) => {
  expect(linesOf(activations)).toEqual(lines);
});

test('says which place of how many', () => {
  const cycle = new PlaceCycle();
  cycle.next('said', rangesOn(3, 5));
  expect(cycle.next('said', rangesOn(3, 5))).toMatchObject({ number: 2, of: 2 });
});
