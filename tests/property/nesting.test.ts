import fc from 'fast-check';
import { expect, test } from 'vitest';
import { placeTooDeep } from '../../server/src/yaml/nesting.ts';
import { parseYaml } from '../../server/src/yaml/parse-yaml.ts';
import type { YamlNode } from '../../server/src/yaml/yaml-node.ts';

const piece = fc.constantFrom(
  '[',
  ']',
  '{',
  '}',
  'a: ',
  'b',
  ', ',
  '- ',
  '? ',
  ': ',
  '# c',
  '"',
  "'",
  '&x ',
  '!t ',
  '|',
);
const line = fc
  .tuple(fc.integer({ min: 0, max: 6 }), fc.array(piece, { maxLength: 6 }))
  .map(([indent, pieces]) => ' '.repeat(indent) + pieces.join(''));
const text = fc.array(line, { maxLength: 12 }).map((lines) => lines.join('\n'));

function depthOf(node: YamlNode | null): number {
  if (node?.kind === 'list') return 1 + Math.max(0, ...node.items.map(depthOf));
  if (node?.kind === 'map') {
    return 1 + Math.max(0, ...node.pairs.map(({ key, value }) => Math.max(depthOf(key), depthOf(value))));
  }
  return 0;
}

test('what is not too deep the library does not go deeper into', () => {
  fc.assert(
    fc.property(text, fc.integer({ min: 1, max: 6 }), (given, deepest) => {
      fc.pre(placeTooDeep(given, deepest) === undefined);
      // In a column a map may hold a list, and a key in brackets is a map of its own.
      expect(depthOf(parseYaml(given).contents)).toBeLessThanOrEqual(2 * deepest + 1);
    }),
    { numRuns: 20_000 },
  );
});
