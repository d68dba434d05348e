import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { transformSync } from 'esbuild';
import { checkSync } from 'recheck';
import { parseAst } from 'vite';
import { expect, test } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));

/**
 * Expressions whose time grows with the square of their text, and why that text stays short. No other is allowed, and none
 * that grows faster.
 */
const bounded: Readonly<Record<string, string>> = {
  '[?#].*$': 'the address of a picture',
  '^lesson:\\s*"?[^"]*$': 'a line of at most 2,000 characters',
  '^\\s*(- )?[a-z -]*$': 'a line of at most 2,000 characters',
  '^\\s*(?:- )?([a-z -]+):\\s*\\[(.*)$': 'a line of at most 2,000 characters',
  '^\\s*(?:- )?([a-z -]+):\\s*(.*)$': 'a line of at most 2,000 characters',
  'f+e?$': 'a grapheme',
  '[;,\\n](?![^(]{0,100}\\))': 'looks at most 100 characters ahead',
  '^[/<“"\'‘[-]+|[/>”"\'’\\]-]+$': 'a spelling in a cell of a table',
  '^-+|-+$': 'a title, for a file name',
  '[^/]*$': 'an address',
  '([a-zA-Z]+)\\s*\\(([^)]*)\\)[\\s,]*': 'an attribute of at most 5,000 characters',
  '\\B(?=(\\d{3})+$)': 'the digits of a number',
};

interface Expression {
  readonly file: string;
  readonly pattern: string;
  readonly flags: string;
}

/** Every expression that is written out in the sources; those made of words at run time are short and plain. */
function expressions(): readonly Expression[] {
  return ['server/src', 'client/src'].flatMap((folder) =>
    readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.ts'))
      .flatMap((name) => {
        const source = readFileSync(join(root, folder, name), 'utf8');
        const { code } = transformSync(source, { loader: 'ts', format: 'esm' });
        return expressionsIn(parseAst(code)).map((found) => ({ file: `${folder}/${name}`, ...found }));
      }),
  );
}

function expressionsIn(node: unknown): readonly Omit<Expression, 'file'>[] {
  if (Array.isArray(node)) return node.flatMap(expressionsIn);
  if (typeof node !== 'object' || node === null) return [];
  const { regex } = node as { readonly regex?: Omit<Expression, 'file'> };
  return regex === undefined ? Object.values(node).flatMap(expressionsIn) : [regex];
}

test('no regular expression can be made to run long', () => {
  const seen = new Map(expressions().map((each) => [`${each.pattern}/${each.flags}`, each]));
  expect(seen.size).toBeGreaterThan(200);
  const slow = [...seen.values()].flatMap(({ file, pattern, flags }) => {
    const found = checkSync(pattern, flags, { timeout: 20_000 });
    if (found.status === 'safe') return [];
    const growth = found.status === 'vulnerable' ? found.complexity.summary : found.status;
    const isAllowed = Object.hasOwn(bounded, pattern) && /^[23](?:nd|rd) degree/.test(growth);
    return isAllowed ? [] : [`${file}: ${pattern} (${growth})`];
  });
  expect(slow).toEqual([]);
}, 120_000);

test('the expressions that are allowed are still there', () => {
  const patterns = new Set(expressions().map(({ pattern }) => pattern));
  expect(Object.keys(bounded).filter((pattern) => !patterns.has(pattern))).toEqual([]);
});

test('the check finds an expression that can be made to run long', () => {
  expect(checkSync('^(a+)+$', '').status).toBe('vulnerable');
});
