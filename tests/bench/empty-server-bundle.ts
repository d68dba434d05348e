import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

/** Bundles the empty server as our own is bundled, into a folder; gives the path of its script. */
export async function bundleEmptyServer(folder: string): Promise<string> {
  const outfile = join(folder, 'empty.cjs');
  await build({
    entryPoints: [fileURLToPath(new URL('empty-server.ts', import.meta.url))],
    bundle: true,
    minify: true,
    platform: 'node',
    format: 'cjs',
    target: 'node20',
    mainFields: ['module', 'main'],
    outfile,
    logLevel: 'error',
  });
  return outfile;
}
