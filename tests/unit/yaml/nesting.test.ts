import { expect, test } from 'vitest';
import { placeTooDeep } from '../../../server/src/yaml/nesting.ts';
import { readYamlNodes } from '../../../server/src/yaml/read-yaml.ts';

const stairs = (steps: number): string =>
  Array.from({ length: steps }, (_, step) => `${' '.repeat(step)}a:`).join('\n');

test.each([
  [
    'a sequence as it is written',
    'lessons:\n  - name: "1"\n    targets: { readable: 95 }\n    spellings: [a as in map]\n',
  ],
  ['many lists beside each other', 'a: []\nb: [[], []]\n'.repeat(500)],
  ['forty lists in lists', `${'['.repeat(40)}${']'.repeat(40)}`],
  ['forty levels of keys', stairs(40)],
  ['closing brackets alone', `${']'.repeat(500)}[`],
  ['nothing', ''],
])('%s is not too deep', (_, text) => {
  expect(placeTooDeep(text)).toBeUndefined();
});

// What the library is not given cannot bring the process down; that it can was seen once, at 10,000 brackets.
test.each([
  ['brackets', '['.repeat(10_000)],
  ['braces over lines', '{a:\n'.repeat(10_000)],
  ['dashes', `${'- '.repeat(10_000)}a`],
  ['question marks', `${'? '.repeat(10_000)}a`],
  ['stairs of keys', stairs(1000)],
  ['brackets below keys', `${stairs(30)} ${'['.repeat(30)}`],
])('%s without end are told at their place, and not given to the library', (_, text) => {
  const place = placeTooDeep(text) ?? -1;
  expect(place).toBeGreaterThan(0);
  expect(readYamlNodes(text)).toEqual({
    contents: null,
    errors: [
      { code: 'RESOURCE_EXHAUSTION', message: 'Nested too deeply', span: { start: place, end: place + 1 } },
    ],
    warnings: [],
  });
});
