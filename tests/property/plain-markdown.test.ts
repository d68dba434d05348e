import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseMarkdown } from '../../server/src/story/markdown/parse-markdown.ts';
import { parsePlainMarkdown } from '../../server/src/story/markdown/plain-markdown.ts';

/**
 * The reader of plain markdown gives what the library `remark-parse` gives, or nothing. Pages are put together from the
 * pieces that stories are made of, with all that can be wrong about them.
 */
describe('plain markdown', () => {
  it('is read as the library reads it, whatever the pieces', () => {
    let read = 0;
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...pieces), { maxLength: 20 }), (parts) => {
        if (isReadAlike(parts.join(''))) read++;
      }),
      { numRuns: 10_000 },
    );
    expect(read).toBeGreaterThan(1000);
  });

  it('is read as the library reads it, line by line', () => {
    let read = 0;
    fc.assert(
      fc.property(fc.array(line, { maxLength: 8 }), fc.constantFrom('\n', '\r\n'), (lines, lineEnd) => {
        if (isReadAlike(lines.join(lineEnd))) read++;
      }),
      { numRuns: 10_000 },
    );
    expect(read).toBeGreaterThan(1000);
  });

  it('is what nearly every page of the samples is written in', () => {
    const folder = new URL('../../samples/', import.meta.url);
    const pages = readdirSync(folder)
      .filter((name) => name.endsWith('.md'))
      .flatMap((name) => readFileSync(new URL(name, folder), 'utf8').split(/^---$/m).slice(2));
    expect(pages.length).toBeGreaterThan(50);
    expect(pages.filter(isReadAlike).length / pages.length).toBeGreaterThan(0.95);
  });

  it.each([
    'The cat ran.\nIt sat down. ',
    '# A Red Hat\n\nKim has a red hat.\n',
    '![Kim at the pond](art/pond-1.png)\n\n"Come in!" said Kim.\n',
    '> Ask: where is the frog?\n>\n> Point at it.\n\nThe frog is in the mud.\r\n',
    '1881 was long ago.\nStop! & go.',
  ])('%j is plain', (source) => {
    expect(isReadAlike(source)).toBe(true);
  });
});

/** True when the page was read; fails when it was read otherwise than by the library. */
function isReadAlike(source: string): boolean {
  const plain = parsePlainMarkdown(source);
  if (plain === undefined) return false;
  expect({ source, blocks: plain }).toEqual({ source, blocks: parseMarkdown(source) });
  return true;
}

const pieces = [
  ...[
    'The',
    'cat',
    'ran',
    '.',
    '!',
    '?',
    ',',
    '"',
    '’',
    "'",
    '(',
    ')',
    '3',
    '12',
    'é',
    '😀',
    '…',
    ':',
    ';',
    '|',
    '$',
  ],
  ...[
    ' ',
    ' ',
    ' ',
    '  ',
    '\n',
    '\n',
    '\n\n',
    '\r\n',
    '\r',
    '\t',
    '    ',
    '\u00a0',
    '\u2028',
    '\ufeff',
    '\0',
  ],
  ...['# ', '#', '## A', '> ', '>', '- ', '-', '+', '1. ', '2) ', '=', '===', '~~~', '```', '`'],
  ...[
    '*',
    '**',
    '_',
    '[',
    ']',
    '](',
    '![',
    '![A hat](art/hat.png)',
    '![]()',
    '![x](y z)',
    '<',
    '<br>',
    '<!-- -->',
  ],
  ...['&', '&amp;', '& ', '\\', '\\*', '[a]: b', '^', '%', 'https://a.b', 'a@b.c'],
];

const line = fc
  .tuple(
    fc.constantFrom('', '', '', '', '> ', '>', '# ', '#', '- ', '1. ', ' ', '    ', '>  '),
    fc.constantFrom(
      ...[
        '',
        '',
        'The cat ran.',
        'It sat',
        '![A hat](art/hat.png)',
        '![a](b) and',
        'Go! ![a](b)',
        'Kim & Nod',
        'a *b*',
      ],
      ...[
        '12 cats',
        '12. cats',
        '# x',
        '#',
        '=',
        '---',
        '“Oh,” he said',
        'a `b`',
        'A #',
        '![a] (b)',
        '![a](b c)',
        '![a]',
      ],
    ),
    fc.constantFrom('', '', '', ' ', '  ', ' #'),
  )
  .map((parts) => parts.join(''));
