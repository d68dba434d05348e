import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseYaml } from '../../server/src/yaml/parse-yaml.ts';
import { parsePlainYaml } from '../../server/src/yaml/plain-yaml.ts';

/**
 * The reader of plain YAML gives what the library `yaml` gives, or nothing. Texts are put together from the pieces that
 * sequences and front matters are made of, with all that can be wrong about them.
 */
describe('plain YAML', () => {
  it('is read as the library reads it, whatever the pieces', () => {
    let read = 0;
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...pieces), { maxLength: 24 }), (parts) => {
        if (expectSame(parts.join(''))) read++;
      }),
      { numRuns: 20_000 },
    );
    expect(read).toBeGreaterThan(500);
  });

  it('is read as the library reads it, line by line', () => {
    let read = 0;
    fc.assert(
      fc.property(fc.array(line, { maxLength: 8 }), fc.constantFrom('\n', '\r\n'), (lines, lineEnd) => {
        if (expectSame(lines.join(lineEnd))) read++;
      }),
      { numRuns: 20_000 },
    );
    expect(read).toBeGreaterThan(2000);
  });

  it('is what the sample sequence is written in, and stays right when a letter of it changes', () => {
    const sample = readFileSync(new URL('../../samples/sequence.yaml', import.meta.url), 'utf8');
    expect(expectSame(sample)).toBe(true);
    const start = sample.indexOf('lessons:');
    fc.assert(
      fc.property(fc.nat(1500), fc.nat(3), fc.constantFrom('', ...pieces), (at, taken, put) => {
        expectSame(sample.slice(start, start + at) + put + sample.slice(start + at + taken, start + 1600));
      }),
      { numRuns: 2000 },
    );
  });

  it.each([
    'title: Fig Hill # our own\n',
    "names: [Kim, \"Mr. Hill\", 'O''Dell']\n",
    'lessons:\n- name: "1"\n  spellings: [a as in map]\n\n  # later\n- name: "2"\n',
    'targets: { readable: 95, story words: 1 }\n',
    'story words:\n  pond: a small lake\n  raft:\n',
    'spellings: [\n  a as in map,\n  m as in mud\n  ]\n',
  ])('%j is plain', (text) => {
    expect(expectSame(text)).toBe(true);
  });
});

/** True when the text was read; fails when it was read otherwise than by the library, or with a fault in it. */
function expectSame(text: string): boolean {
  const plain = parsePlainYaml(text);
  if (plain === undefined) return false;
  const { contents, errors, warnings } = parseYaml(text);
  expect({ text, contents: plain, errors: [], warnings: [] }).toEqual({ text, contents, errors, warnings });
  return true;
}

const pieces = [
  ...[
    'a',
    'Kim',
    'as in',
    '3',
    'é',
    '’',
    '.',
    '/',
    '(',
    ')',
    '~',
    '*x',
    '&x',
    '!',
    '%',
    '@',
    '`',
    '|',
    '>',
    '$',
  ],
  ...[': ', ':', '- ', '-', ', ', ',', '[', ']', '{', '}', '"', "'", "''", '#', ' #', '? ', '\\', '=', '<<'],
  ...[
    ' ',
    '  ',
    '    ',
    '\n',
    '\n',
    '\n  ',
    '\n    ',
    '\n- ',
    '\n  - ',
    '\r\n',
    '\r',
    '\t',
    '\u00a0',
    '\ufeff',
    '\u2028',
  ],
  ...['name: ', 'title:', 'key: value\n', '# note\n', '---\n', '...\n', '["!", "?"]', '{ page: 14 }'],
];

const line = fc
  .tuple(
    fc.constantFrom('', '', '  ', '  ', '    ', '- ', '  - ', '- - '),
    fc.constantFrom('', 'name: ', 'title:', 'title:\n      ', 'a b: ', '"q": ', 'x : ', "it's: ", '# '),
    fc.constantFrom(
      ...[
        '',
        'value',
        'two words',
        '"quoted"',
        "'it''s'",
        '[a, b c]',
        '[a,',
        'b]',
        '{ c: 1, d: [e] }',
        '[]',
        '{}',
      ],
      ...[
        'x # note',
        '[a] # note',
        '"q"# no',
        'a: b',
        '-1',
        ']',
        ', ',
        '[a, [b]]',
        '[a: b]',
        '{ a }',
        '"open',
        '  ',
      ],
    ),
    fc.constantFrom('', '', '', ' ', ':'),
  )
  .map((parts) => parts.join(''));
