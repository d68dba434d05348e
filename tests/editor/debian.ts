import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

/** The place of a program on the search path, or nothing. */
export function findProgram(...names: readonly string[]): string | undefined {
  const folders = (process.env.PATH ?? '').split(delimiter);
  const places = names.flatMap((name) => folders.map((folder) => join(folder, name)));
  return places.find((place) => existsSync(place));
}

/**
 * Installs Debian packages where this can be done: as root and with apt-get. Elsewhere it does nothing, and the caller
 * says what is missing.
 */
export function tryToInstall(packages: readonly string[], say: (line: string) => void): void {
  const isRoot = process.getuid?.() === 0;
  if (!isRoot || findProgram('apt-get') === undefined) return;
  say(`Installing ${packages.join(', ')}.`);
  const environment = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  const apt = (...words: string[]) =>
    execFileSync('apt-get', ['-q', '-y', ...words], {
      env: environment,
      stdio: ['ignore', 'ignore', 'inherit'],
    });
  try {
    apt('update');
    apt('install', '--no-install-recommends', ...packages);
  } catch {
    say(`apt-get could not install ${packages.join(', ')}.`);
  }
}
