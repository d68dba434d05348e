import { readFile } from 'node:fs/promises';
import type { Plugin } from 'esbuild';
import { transform } from 'esbuild';
import { parseAst } from 'vite';

/** Leaves the pages and examples of the rules out of a bundle: only people and tests read them. */
export const withoutDocumentation: Plugin = leavingOut('documentation', 'examples');

/** Leaves only the examples of the rules out: the command line writes their pages into SARIF. */
export const withoutExamples: Plugin = leavingOut('bad', 'good', 'examples');

function leavingOut(...members: readonly string[]): Plugin {
  return {
    name: `without-${members.join('-')}`,
    setup(build) {
      build.onLoad({ filter: /[\\/]review[\\/]rules[\\/][\w-]+\.ts$/ }, async ({ path }) => {
        const { code } = await transform(await readFile(path, 'utf8'), { loader: 'ts', format: 'esm' });
        let kept = '';
        let at = 0;
        for (const { start, end } of membersIn(parseAst(code), members)) {
          kept += code.slice(at, start);
          at = end + (code.charAt(end) === ',' ? 1 : 0);
        }
        return { contents: kept + code.slice(at), loader: 'js' };
      });
    },
  };
}

interface Place {
  readonly start: number;
  readonly end: number;
}

/** The members of objects that are left out, in the order of the code. */
function membersIn(node: unknown, names: readonly string[]): readonly Place[] {
  if (Array.isArray(node)) return node.flatMap((each) => membersIn(each, names));
  if (typeof node !== 'object' || node === null) return [];
  const { type, key, start, end } = node as {
    readonly type?: string;
    readonly key?: { readonly name?: string };
  } & Place;
  if (type === 'Property' && names.includes(key?.name ?? '')) return [{ start, end }];
  return Object.values(node).flatMap((each) => membersIn(each, names));
}
