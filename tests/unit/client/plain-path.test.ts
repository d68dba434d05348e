import { expect, test } from 'vitest';
import { isPlainPath } from '../../../client/src/plain-path.ts';

test.each([
  ['/class/sequence.yaml', true],
  ['/class/grade.1/sequence.yaml', true],
  ['/class/..stories/sequence.yaml', true],
  ['/class/../secret.yaml', false],
  ['/class/./sequence.yaml', false],
  ['/class/..', false],
  ['/class\\..\\secret.yaml', false],
  ['..', false],
])('%s: %s', (path, isPlain) => {
  expect(isPlainPath(path)).toBe(isPlain);
});
