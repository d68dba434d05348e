import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import manifest from '../../package.json' with { type: 'json' };
import lock from '../../package-lock.json' with { type: 'json' };

const root = fileURLToPath(new URL('../..', import.meta.url));
const read = (path: string): string => readFileSync(join(root, path), 'utf8');

/** Packages that the sources import at run time, at most; each has to be worth it. */
const most = 15;

/** Licences that allow the packages to be passed on inside a program under the MIT licence. */
const allowed = ['MIT', 'ISC', 'BSD-2-Clause', 'BSD-3-Clause', 'Apache-2.0', '0BSD', 'BlueOak-1.0.0'];

const shipped = read('.cache/bundled-packages.txt').trim().split('\n');

interface Component {
  readonly name: string;
  readonly version: string;
  readonly hashes: readonly { readonly alg: string; readonly content: string }[];
  readonly licenses: readonly { readonly license: { readonly id: string } }[];
}
const bill: {
  readonly bomFormat: string;
  readonly specVersion: string;
  readonly components: readonly Component[];
} = JSON.parse(read('server/dist/bill-of-materials.json'));

describe('dependencies', () => {
  test(`are at most ${most}, and each is pinned to one version`, () => {
    expect(Object.keys(manifest.dependencies).length).toBeLessThanOrEqual(most);
    const versions = Object.entries({ ...manifest.dependencies, ...manifest.devDependencies });
    expect(versions.filter(([, version]) => !/^\d+\.\d+\.\d+(?:-[\w.]+)?$/.test(version))).toEqual([]);
  });

  test('are in the lock file with the hash of what is installed, and no address of a registry', () => {
    const entries = Object.entries(lock.packages).filter(([path]) => path !== '');
    const without = entries.filter(([, entry]) => !('integrity' in entry) && !('link' in entry));
    expect(without.map(([path]) => path)).toEqual([]);
    expect(read('package-lock.json')).not.toMatch(/"resolved"/);
  });

  test.each(shipped)('%s ships under a licence that allows it', (name) => {
    const { license } = JSON.parse(read(`node_modules/${name}/package.json`));
    expect(allowed).toContain(license);
  });
});

describe('the bill of materials', () => {
  test('names every package that ships, with version, licence and hash', () => {
    expect([bill.bomFormat, bill.specVersion]).toEqual(['CycloneDX', '1.6']);
    expect(bill.components.map(({ name }) => name)).toEqual(shipped);
    for (const { name, version, hashes, licenses } of bill.components) {
      expect(version, name).toMatch(/^\d+\.\d+\.\d+/);
      expect(hashes[0]?.content, name).toMatch(/^[0-9a-f]{128}$/);
      expect(allowed, name).toContain(licenses[0]?.license.id);
    }
  });
});
