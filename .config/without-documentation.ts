import { readFile } from 'node:fs/promises';
import type { Plugin } from 'esbuild';
import { transform } from 'esbuild';
import { parseAst } from 'vite';

/** What of a rule only people and tests read, and no bundle has to carry. */
const leftOut: readonly string[] = ['documentation', 'examples'];

/** Leaves the pages and examples of the rules out of a bundle. */
export const withoutDocumentation: Plugin = {
  name: 'without-documentation',
  setup(build) {
    build.onLoad({ filter: /[\\/]review[\\/]rules[\\/][\w-]+\.ts$/ }, async ({ path }) => {
      const { code } = await transform(await readFile(path, 'utf8'), { loader: 'ts', format: 'esm' });
      let kept = '';
      let at = 0;
      for (const { start, end } of membersIn(parseAst(code))) {
        kept += code.slice(at, start);
        at = end + (code.charAt(end) === ',' ? 1 : 0);
      }
      return { contents: kept + code.slice(at), loader: 'js' };
    });
  },
};

interface Place {
  readonly start: number;
  readonly end: number;
}

/** The members of objects that are left out, in the order of the code. */
function membersIn(node: unknown): readonly Place[] {
  if (Array.isArray(node)) return node.flatMap(membersIn);
  if (typeof node !== 'object' || node === null) return [];
  const { type, key, start, end } = node as {
    readonly type?: string;
    readonly key?: { readonly name?: string };
  } & Place;
  if (type === 'Property' && leftOut.includes(key?.name ?? '')) return [{ start, end }];
  return Object.values(node).flatMap(membersIn);
}
