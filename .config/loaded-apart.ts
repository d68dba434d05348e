import { readFile } from 'node:fs/promises';
import { basename } from 'node:path';
import type { Plugin } from 'esbuild';

/**
 * Modules of plain functions that few texts or requests need: they are bundles of their own beside the others on Node, read
 * when one of their functions is first called.
 */
export const apart = [
  'server/src/yaml/parse-yaml.ts',
  'server/src/story/markdown/parse-markdown.ts',
  'server/src/start/new-story.ts',
  'server/src/editor/start/import-answer.ts',
  'server/src/chains/build-chain.ts',
  'server/src/fit/fit-text.ts',
] as const;

/** The name of a module's bundle, `parse-yaml.js`. */
export function bundleName(module: string): string {
  return basename(module, '.ts').concat('.js');
}

/** Puts in the place of each module of {@link apart}, but for the bundle's own, functions of the same names that load its bundle. */
export function loadedApart(own?: string): Plugin {
  const others = apart.filter((module) => module !== own);
  const paths = others.map((module) => module.replaceAll('/', '[\\\\/]').replace('.', '\\.'));
  return {
    name: 'loaded-apart',
    setup(build) {
      build.initialOptions.external = [
        ...(build.initialOptions.external ?? []),
        ...others.map((module) => `./${bundleName(module)}`),
      ];
      build.onLoad({ filter: new RegExp(`[\\\\/](?:${paths.join('|')})$`) }, async ({ path }) => {
        const source = await readFile(path, 'utf8');
        const functions = [...source.matchAll(/^export function (\w+)/gm)].map(([, name]) => name);
        const lines = functions.map(
          (name) => `export const ${name} = (...given) => load().${name}(...given);`,
        );
        return {
          contents: `let loaded;\nconst load = () => (loaded ??= require('./${bundleName(path)}'));\n${lines.join('\n')}\n`,
          loader: 'js',
        };
      });
    },
  };
}
