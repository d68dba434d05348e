import { describe, expect, test } from 'vitest';
import { canonicalUri, fileName, isInside, parentOf, resolvedIn } from '../../../server/src/editor/uri.ts';

test.each([
  ['file:///lane/a.md', 'file:///lane/a.md'],
  ['file:///c%3A/Lane/a.md', 'file:///c%3A/Lane/a.md'],
  ['file:///C:/Lane/a.md', 'file:///c%3A/Lane/a.md'],
  ['file:///lane/é (1).md', 'file:///lane/%C3%A9%20%281%29.md'],
  ['file:///lane/%C3%A9%20(1).md', 'file:///lane/%C3%A9%20%281%29.md'],
  ['file:///lane/../hill/./a.md', 'file:///hill/a.md'],
  ['file:///lane/%2e%2e/hill/a.md', 'file:///hill/a.md'],
  ['file:///lane/', 'file:///lane'],
  ['FILE:///lane', 'file:///lane'],
  ['vscode-vfs://github/lane/a.md', 'vscode-vfs://github/lane/a.md'],
  ['vscode-vfs://github', 'vscode-vfs://github/'],
  ['untitled:Untitled-1', 'untitled:Untitled-1'],
  ['git:/lane/a.md?%7B%22ref%22%7D', 'git:/lane/a.md?%7B%22ref%22%7D'],
  ['file:///100%/a.md', 'file:///100%25/a.md'],
])('%s is %s', (uri, canonical) => {
  expect(canonicalUri(uri)).toBe(canonical);
  expect(canonicalUri(canonical)).toBe(canonical);
});

test.each([
  ['file:///lane/spring/a.md', 'file:///lane/spring'],
  ['file:///a.md', 'file:///'],
  ['file:///', undefined],
  ['untitled:Untitled-1', undefined],
])('%s stands in %s', (uri, parent) => {
  expect(parentOf(uri)).toBe(parent);
});

test.each([
  ['file:///lane/a.md', 'file:///lane', true],
  ['file:///lane', 'file:///lane', true],
  ['file:///lane2/a.md', 'file:///lane', false],
  ['file:///a.md', 'file:///', true],
])('%s inside %s: %s', (uri, folder, inside) => {
  expect(isInside(uri, folder)).toBe(inside);
});

test('a name is given as people write it', () => {
  expect(fileName('file:///lane/my%20plan.yaml')).toBe('my plan.yaml');
});

describe('a path from file:///lane/spring, not out of file:///lane', () => {
  test.each([
    ['plan.yaml', 'file:///lane/spring/plan.yaml'],
    ['./plan.yaml', 'file:///lane/spring/plan.yaml'],
    ['../plan.yaml', 'file:///lane/plan.yaml'],
    ['../my plans/é.yaml', 'file:///lane/my%20plans/%C3%A9.yaml'],
    ['a%2e.yaml', 'file:///lane/spring/a%252e.yaml'],
    ['../../plan.yaml', 'outside'],
    ['../../lane2/plan.yaml', 'outside'],
    ['../../../../../plan.yaml', 'outside'],
    ['../../lane', 'outside'],
    ['/plan.yaml', 'absolute'],
    ['\\plan.yaml', 'absolute'],
    ['c:/plan.yaml', 'absolute'],
    ['https://example.org/plan.yaml', 'absolute'],
    ['..\\..\\plan.yaml', 'unusable'],
    ['a\u0000.yaml', 'unusable'],
    ['', 'unusable'],
  ])('%j leads to %s', (path, target) => {
    expect(resolvedIn('file:///lane/spring', path, 'file:///lane')).toBe(target);
  });
});
