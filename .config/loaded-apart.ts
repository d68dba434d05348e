import { readFile } from 'node:fs/promises';
import { basename } from 'node:path';
import type { Plugin } from 'esbuild';

/**
 * Modules of plain functions that few texts need: they are bundles of their own beside the others on Node, read when one
 * of their functions is first called.
 */
export const apart = [
  'server/src/yaml/parse-yaml.ts',
  'server/src/story/markdown/parse-markdown.ts',
] as const;

/** The name of a module's bundle, `parse-yaml.js`. */
export function bundleName(module: string): string {
  return basename(module, '.ts').concat('.js');
}

/** Puts in the place of each module of {@link apart} functions of the same names that load its bundle. */
export const loadedApart: Plugin = {
  name: 'loaded-apart',
  setup(build) {
    build.initialOptions.external = [
      ...(build.initialOptions.external ?? []),
      ...apart.map((module) => `./${bundleName(module)}`),
    ];
    const names = apart.map((module) => basename(module, '.ts')).join('|');
    build.onLoad({ filter: new RegExp(`[\\\\/](?:${names})\\.ts$`) }, async ({ path }) => {
      const source = await readFile(path, 'utf8');
      const functions = [...source.matchAll(/^export function (\w+)/gm)].map(([, name]) => name);
      const lines = functions.map((name) => `export const ${name} = (...given) => load().${name}(...given);`);
      return {
        contents: `let loaded;\nconst load = () => (loaded ??= require('./${bundleName(path)}'));\n${lines.join('\n')}\n`,
        loader: 'js',
      };
    });
  },
};
