import { expect, test } from 'vitest';
import { nearestNames } from '../../../server/src/editor/nearest-names.ts';

test.each([
  ['12', ['1', '2', '10', '11', '13', '20'], ['11', '13', '10']],
  ['Unit 3b', ['Unit 2', 'Unit 3a', 'Unit 3', 'Review'], ['Unit 3a', 'Unit 3', 'Unit 2']],
  ['autum', ['spring', 'Autumn'], ['Autumn', 'spring']],
  ['1', [], []],
])('for %s of %j: %j', (mistaken, names, nearest) => {
  expect(nearestNames(mistaken, names)).toEqual(nearest);
});
