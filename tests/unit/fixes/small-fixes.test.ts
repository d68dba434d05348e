import { describe, expect, it } from 'vitest';
import { breakPageAt } from '../../../server/src/fixes/break-page.ts';
import { removeKey } from '../../../server/src/fixes/remove-key.ts';
import { edited } from '../../../server/src/fixes/text-edit.ts';
import { readStory } from '../../../server/src/story/read-story.ts';

const head = '---\nlesson: "1"\n---\n';

describe('a page break where a page becomes too long', () => {
  it.each([
    ['A man sat. A |cat sat.', 'A man sat.\n\n---\n\nA cat sat.'],
    ['A man sat.\nA |cat sat.', 'A man sat.\n\n---\n\nA cat sat.'],
    ['A man sat.\n"A |cat!" said Tam.', 'A man sat.\n\n---\n\n"A cat!" said Tam.'],
    ['A |man sat. A cat sat.', 'A man sat.\n\n---\n\nA cat sat.'],
  ])('%s', (marked, after) => {
    const text = head + marked.replace('|', '');
    const story = readStory(text);
    const [page] = story.pages;
    const edit = page && breakPageAt(text, page, head.length + marked.indexOf('|'));
    expect(edit && edited(text, [edit])).toBe(head + after);
    expect(edit && readStory(edited(text, [edit])).pages.length).toBe(2);
  });

  it.each(['A |man sat.', '- A man sat. A |cat sat.'])('none in %s', (marked) => {
    const text = head + marked.replace('|', '');
    const [page] = readStory(text).pages;
    expect(page && breakPageAt(text, page, head.length + marked.indexOf('|'))).toBeUndefined();
  });
});

describe('a key that a story does not have', () => {
  it.each([
    ['---\nlesson: "1"\nauthor: me\n---\nA cat.\n', '---\nlesson: "1"\n---\nA cat.\n'],
    ['---\r\nauthor: me\r\nlesson: 1\r\n---\r\n', '---\r\nlesson: 1\r\n---\r\n'],
    ['---\nauthor:\n  - me\nlesson: 1\n---\n', undefined],
    ['---\n{ author: me, lesson: 1 }\n---\n', undefined],
  ])('is taken out of %j', (text, after) => {
    const start = text.indexOf('author');
    const edit = removeKey(text, { start, end: start + 'author'.length });
    expect(edit && edited(text, [edit])).toBe(after);
  });
});
