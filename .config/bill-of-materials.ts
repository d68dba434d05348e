/**
 * The software bill of materials of what ships, as CycloneDX 1.6: the packages inside the bundles with version, licence and
 * the hash of their archive from the lock file. Written by the build into `server/dist`; the same packages give the same text.
 */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';

/** @param root the repository. @param names the packages inside the bundles. Throws when one is not in the lock file. */
export async function billOfMaterials(root: string, names: readonly string[]): Promise<string> {
  const readJson = async (path: string) => JSON.parse(await readFile(join(root, path), 'utf8'));
  const { name, version, license } = await readJson('package.json');
  const { packages } = await readJson('package-lock.json');
  const components = await Promise.all(
    names.map(async (each) => {
      const own = await readJson(`node_modules/${each}/package.json`);
      const integrity: unknown = packages[`node_modules/${each}`]?.integrity;
      const hash = /^sha512-(.+)$/.exec(String(integrity))?.[1];
      if (hash === undefined) throw new Error(`${each} has no SHA-512 in the lock file.`);
      return {
        type: 'library',
        'bom-ref': `pkg:npm/${each.replace('@', '%40')}@${own.version}`,
        name: each,
        version: own.version,
        hashes: [{ alg: 'SHA-512', content: Buffer.from(hash, 'base64').toString('hex') }],
        licenses: [{ license: { id: own.license } }],
        purl: `pkg:npm/${each.replace('@', '%40')}@${own.version}`,
      };
    }),
  );
  const bill = {
    bomFormat: 'CycloneDX',
    specVersion: '1.6',
    version: 1,
    metadata: {
      component: { type: 'application', name, version, licenses: [{ license: { id: license } }] },
    },
    components,
  };
  return `${JSON.stringify(bill)}\n`;
}
