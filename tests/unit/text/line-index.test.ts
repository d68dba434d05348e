import fc from 'fast-check';
import { expect, test } from 'vitest';
import { lineIndex } from '../../../server/src/text/line-index.ts';

test.each([
  ['an empty text', '', 0, '1:1'],
  ['the first unit', 'Kim', 0, '1:1'],
  ['the end', 'Kim', 3, '1:4'],
  ['before the start', 'Kim', -5, '1:1'],
  ['past the end', 'Kim\nPip', 99, '2:4'],
  ['behind LF', 'Kim\nPip', 4, '2:1'],
  ['behind CRLF', 'Kim\r\nPip', 5, '2:1'],
  ['inside CRLF', 'Kim\r\nPip', 4, '1:5'],
  ['behind CR', 'Kim\rPip', 4, '2:1'],
  ['mixed line ends', 'a\r\rb\r\n\nc', 7, '5:1'],
  ['behind the last line end', 'Kim\n', 4, '2:1'],
  ['an emoji is two columns', '😀b', 2, '1:3'],
])('%s', (_, text, offset, expected) => {
  const { line, column } = lineIndex(text)(offset);
  expect(`${line}:${column}`).toBe(expected);
});

test('every place is the one that counting finds', () => {
  const texts = fc.array(fc.constantFrom('a', '😀', '\n', '\r\n', '\r', ' ')).map((parts) => parts.join(''));
  fc.assert(
    fc.property(texts, (text) => {
      const place = lineIndex(text);
      for (let offset = 0; offset <= text.length; offset++) {
        // A line end counts once it is complete: the CR of a CRLF stays on its line.
        const before = text
          .slice(0, offset)
          .split(text[offset] === '\n' ? /\r\n|\n|\r(?=[\s\S])/ : /\r\n|\n|\r/);
        expect(place(offset)).toEqual({ line: before.length, column: (before.at(-1)?.length ?? 0) + 1 });
      }
    }),
    { numRuns: 200 },
  );
});
