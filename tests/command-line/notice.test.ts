import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const read = (path: string) => readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');

test('NOTICE names every package whose code is in the bundles, in the version that is bundled', () => {
  const notice = read('NOTICE');
  const names = read('.cache/bundled-packages.txt').trim().split('\n');
  expect(names).toContain('unified');
  const titles = names.map(
    (name) => `- ${name} ${JSON.parse(read(`node_modules/${name}/package.json`)).version}`,
  );
  expect(titles.filter((title) => !notice.includes(title))).toEqual([]);
});
