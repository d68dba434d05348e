import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { readZip } from '../support/zip.ts';

/** The repository. */
export const repository = fileURLToPath(new URL('../..', import.meta.url));

/** The package under test, in both forms in which an editor takes it. */
export interface PackagedExtension {
  /** The .vsix file. */
  readonly file: string;
  /** The folder with the unpacked extension. */
  readonly folder: string;
}

/** Packs the built extension into a folder and unpacks it there. */
export function packExtension(folder: string): PackagedExtension {
  const file = join(folder, 'battledore.vsix');
  execFileSync('npm', ['run', '--silent', 'package', '--', '--out', file], {
    cwd: repository,
    stdio: ['ignore', 'ignore', 'inherit'],
    shell: process.platform === 'win32',
  });
  for (const [path, bytes] of readZip(readFileSync(file))) {
    if (!path.startsWith('extension/')) continue;
    const place = join(folder, path);
    mkdirSync(dirname(place), { recursive: true });
    writeFileSync(place, bytes);
  }
  return { file, folder: join(folder, 'extension') };
}
