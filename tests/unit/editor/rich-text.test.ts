import { expect, test } from 'vitest';
import { escapedMarkdown, line, markdown, plainText } from '../../../server/src/editor/rich-text.ts';

test.each([
  ['cat', 'cat'],
  ['<b>cat</b>', '&lt;b&gt;cat&lt;/b&gt;'],
  ['[cat](command:run)', '\\[cat\\]\\(command\\:run\\)'],
  ['![x](http://example.org)', '\\!\\[x\\]\\(http\\://example\\.org\\)'],
  ['*a* _b_ `c` ~d~', '\\*a\\* \\_b\\_ \\`c\\` \\~d\\~'],
  ['a\n\n# b\n- c\n1. d', 'a \\# b \\- c 1\\. d'],
  ['a | b', 'a \\| b'],
  ['\\*', '\\\\\\*'],
  ['&lt;', '&amp;lt;'],
  ['a\u202eb\u0000c\ud800d', 'abcd'],
])('%j is escaped as %j', (text, escaped) => {
  expect(escapedMarkdown(text)).toBe(escaped);
});

test('a very long text is cut', () => {
  expect(escapedMarkdown('a'.repeat(10_000))).toHaveLength(501);
});

const blocks = [
  line({ strong: 'night' }, ' · x'),
  { kind: 'table', head: ['letters', 'sound'], rows: [['igh', 'ī']] },
] as const;

test('blocks are rendered as markdown', () => {
  expect(markdown(blocks)).toBe('**night** · x\n\n| letters | sound |\n| --- | --- |\n| igh | ī |');
});

test('blocks are rendered as plain text', () => {
  expect(plainText(blocks)).toBe('night · x\nletters\tsound\nigh\tī');
});
