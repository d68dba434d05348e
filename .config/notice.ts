/**
 * Renews the part of NOTICE that names the packages whose code is inside the bundles, with their licences:
 * `npm run notice`, after a build. The part above the marker is written by hand.
 */
import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const marker = '==== Packages inside the bundles ====\n';

const names = (await readFile(join(root, '.cache/bundled-packages.txt'), 'utf8')).trim().split('\n');
const packages = await Promise.all(names.map(readPackage));
const notice = await readFile(join(root, 'NOTICE'), 'utf8');
const byHand = notice.slice(0, notice.indexOf(marker) + marker.length);
await writeFile(join(root, 'NOTICE'), `${byHand}\n${sections(packages).join('\n')}`);

interface BundledPackage {
  /** Name and version. */
  readonly title: string;
  readonly licence: string;
  /** The lines of its licence file that name the holders of the copyright. */
  readonly copyright: string;
  /** The rest of its licence file, the words of which many packages share. */
  readonly terms: string;
}

async function readPackage(name: string): Promise<BundledPackage> {
  const folder = join(root, 'node_modules', name);
  const { version, license } = JSON.parse(await readFile(join(folder, 'package.json'), 'utf8'));
  const file = (await readdir(folder)).find((entry) => /^licen[cs]e/i.test(entry));
  if (file === undefined) throw new Error(`${name} has no licence file; add its licence by hand.`);
  const text = (await readFile(join(folder, file), 'utf8')).replaceAll('\r\n', '\n');
  const isHolder = (line: string) =>
    /^\W*copyright\b/i.test(line) && !/copyright (notice|holder)/i.test(line);
  const lines = text.split('\n');
  return {
    title: `${name} ${version}`,
    licence: license,
    copyright: lines.filter(isHolder).join(' ').replace(/\s+/g, ' ').trim(),
    terms: lines
      .filter((line) => !isHolder(line))
      .join('\n')
      .trim(),
  };
}

/** One section for each wording of a licence. */
function sections(packages: readonly BundledPackage[]): string[] {
  const byTerms = new Map<string, BundledPackage[]>();
  for (const item of packages) {
    const words = item.terms.toLowerCase().replace(/[^a-z]+/g, ' ');
    byTerms.set(words, [...(byTerms.get(words) ?? []), item]);
  }
  return [...byTerms.values()].map((items) => {
    const list = items.map(({ title, copyright }) => `- ${title}${copyright ? `: ${copyright}` : ''}`);
    return `---- ${items[0]?.licence} ----\n\n${list.join('\n')}\n\n${items[0]?.terms}\n`;
  });
}
