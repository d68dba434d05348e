import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { folderScheme } from '../agreement.ts';

/** Files that exist in memory only, by their path. */
export type MemoryFiles = ReadonlyMap<string, { readonly contentType: string; readonly text: string }>;

/**
 * Bundles the small web extension through which the editor reads and writes the opened folder. It is no part of the
 * Battledore package: only the workbench that `npm start` serves needs it.
 */
export async function buildFileSystemExtension(): Promise<MemoryFiles> {
  const result = await build({
    entryPoints: [fileURLToPath(new URL('extension.ts', import.meta.url))],
    bundle: true,
    write: false,
    platform: 'browser',
    format: 'cjs',
    target: 'es2022',
    external: ['vscode'],
  });
  const manifest = {
    name: 'folder',
    publisher: 'battledore',
    version: '1.0.0',
    engines: { vscode: '^1.91.0' },
    browser: './extension.js',
    activationEvents: [`onFileSystem:${folderScheme}`],
    capabilities: { virtualWorkspaces: true, untrustedWorkspaces: { supported: true } },
    contributes: {
      resourceLabelFormatters: [
        { scheme: folderScheme, formatting: { label: '$' + '{path}', separator: '/' } },
      ],
    },
  };
  return new Map([
    ['package.json', { contentType: 'application/json; charset=utf-8', text: JSON.stringify(manifest) }],
    [
      'extension.js',
      { contentType: 'text/javascript; charset=utf-8', text: result.outputFiles[0]?.text ?? '' },
    ],
  ]);
}
