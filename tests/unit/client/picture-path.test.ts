import { expect, test } from 'vitest';
import { picturePath } from '../../../client/src/workshop/picture-path.ts';

test.each([
  ['map.png', '/lane/a/map.png'],
  ['./art/big%20map.png?x#y', '/lane/a/art/big map.png'],
  ['../map.png', '/lane/map.png'],
  ['../../map.png', 'leads out'],
  ['..%2F..%2Flane-two/map.png', 'leads out'],
  ['..\\..\\map.png', 'leads out'],
  ['/lane/map.png', 'relative'],
  ['https://example.org/map.png', 'beside'],
  ['file:///lane/map.png', 'beside'],
  ['//lane/map.png', 'beside'],
  ['%E0%A4%A', 'cannot be read'],
])('%s', (address, expected) => {
  const path = picturePath(address, '/lane/a/story.md', '/lane');
  expect(typeof path === 'string' ? path : path.trouble).toContain(expected);
});
