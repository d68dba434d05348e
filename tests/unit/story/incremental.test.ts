import { expect, test } from 'vitest';
import { readStory } from '../../../server/src/story/read-story.ts';

const head = '---\nlesson: 1\nnames: [Kim]\n---\n';
const text = `${head}# The Net\n\nKim ran.\n\n---\n\nPip sat.\n\n---\n\nAnn hid.\n`;

/** For each page of the new version whether it is the same object as some page of the old. */
function kept(before: string, after: string): string {
  const old = readStory(before);
  const renewed = readStory(after, old);
  expect(renewed).toEqual(readStory(after));
  return renewed.pages
    .map(({ page }) => (old.pages.some((placed) => placed.page === page) ? 'kept' : 'read'))
    .join(' ');
}

test.each([
  ['no change', text, text, 'kept kept kept'],
  ['a letter on one page', text, text.replace('Pip', 'Pipp'), 'kept read kept'],
  ['a letter in the front matter', text, text.replace('Kim]', 'Kimm]'), 'kept kept kept'],
  ['a page put in', text, text.replace('---\n\nPip', '---\n\nNew.\n\n---\n\nPip'), 'kept read kept kept'],
  ['a page taken out', text, text.replace('\nPip sat.\n\n---\n', ''), 'kept kept'],
  [
    'two pages change places',
    'A\n---\nB\n---\nC\n---\nD',
    'A\n---\nC\n---\nB\n---\nD',
    'kept kept kept kept',
  ],
  [
    'the title goes: a later heading becomes it',
    '# A\n---\n# B\n---\nC',
    'A\n---\n# B\n---\nC',
    'read read kept',
  ],
  ['a title comes before', 'A\n---\n# B\n---\nC', '# A\n---\n# B\n---\nC', 'read read kept'],
  ['an address changes', '[a][b]\n---\nC\n---\n[b]: d', '[a][b]\n---\nC\n---\n[b]: e', 'read kept read'],
  ['a fence swallows pages', 'A\n---\nB\n---\nC', 'A\n---\n```\nB\n---\nC', 'kept read'],
])('%s', (_, before, after, expected) => {
  expect(kept(before, after)).toBe(expected);
});

test('the front matter is kept while its text is the same', () => {
  const old = readStory(text);
  expect(readStory(text.replace('Ann', 'Anna'), old).frontMatter).toBe(old.frontMatter);
  expect(readStory(text.replace('names', 'name'), old).frontMatter).not.toBe(old.frontMatter);
});
