import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readZip } from '../support/zip.ts';

const repository = fileURLToPath(new URL('../..', import.meta.url));

/** Sizes in bytes that the package and its scripts may have; the targets of `server/docs/speed.md`. */
const most = { package: 3_000_000, 'server/dist/node.js': 450_000, 'client/dist/node.js': 550_000 } as const;

let folder: string;
let size: number;
let files: ReadonlyMap<string, Buffer>;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'battledore-package-'));
  const file = join(folder, 'battledore.vsix');
  const vsce = join(repository, 'node_modules/@vscode/vsce/vsce');
  const words = [
    'package',
    '--no-dependencies',
    '--allow-missing-repository',
    '--no-rewrite-relative-links',
    '--out',
    file,
  ];
  execFileSync(process.execPath, [vsce, ...words], {
    cwd: repository,
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  const bytes = readFileSync(file);
  size = bytes.length;
  files = readZip(bytes);
}, 60_000);

afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('the .vsix package', () => {
  test(`is under ${most.package / 1_000_000} MB`, () => {
    expect(size).toBeLessThanOrEqual(most.package);
  });

  test.each(['server/dist/node.js', 'client/dist/node.js'] as const)(
    '%s is no larger than it may be',
    (path) => {
      expect(files.get(`extension/${path}`)?.length).toBeLessThanOrEqual(most[path]);
    },
  );

  test('what printing, chains, fit and new stories need is loaded apart', () => {
    const main = files.get('extension/server/dist/node.js')?.toString('utf8') ?? '';
    for (const apart of ['print', 'build-chain', 'fit-text', 'new-story', 'parse-yaml', 'parse-markdown']) {
      expect([...files.keys()]).toContain(`extension/server/dist/${apart}.js`);
      expect(main).toContain(`${apart}.js`);
    }
  });

  test.each([
    'client/dist/node.js',
    'client/dist/browser.js',
    'client/dist/view.js',
    'client/dist/view.css',
    'client/dist/preview.js',
    'client/dist/preview.css',
    'client/dist/samples.json',
    'client/l10n/bundle.l10n.json',
    'client/media/walkthrough/marks.svg',
    'server/dist/node.js',
    'server/dist/browser.js',
    'server/dist/cli.js',
    'server/dist/words.bin',
    'server/dist/print.js',
    'server/dist/andika-latin-400-normal.woff',
    'changelog.md',
    'LICENSE.txt',
    'NOTICE',
    'package.json',
    'package.nls.json',
    'readme.md',
  ])('has %s', (path) => {
    expect([...files.keys()]).toContain(`extension/${path}`);
  });

  test('has nothing but bundles, data, pictures, grammar and papers', () => {
    const wanted =
      /^(\[Content_Types\]\.xml|extension\.vsixmanifest|extension\/((client|server)\/dist\/[^/]+\.(js|css|bin|woff)|client\/dist\/samples\.json|server\/dist\/bill-of-materials\.json|client\/media\/.+|client\/l10n\/[^/]+\.json|syntaxes\/[^/]+\.json|package(\.nls)?\.json|readme\.md|changelog\.md|LICENSE\.txt|NOTICE))$/;
    expect([...files.keys()].filter((path) => !wanted.test(path))).toEqual([]);
  });

  test('has every file its manifest names', () => {
    const manifest = JSON.parse(files.get('extension/package.json')?.toString('utf8') ?? '{}');
    const named: string[] = [
      manifest.main,
      manifest.browser,
      manifest.icon,
      ...Object.values<string>(manifest.bin),
      ...manifest.contributes.grammars.map((grammar: { path: string }) => grammar.path),
      ...manifest.contributes.viewsContainers.activitybar.map(
        (container: { icon: string }) => container.icon,
      ),
    ];
    const missing = named.filter((path) => !files.has(`extension/${path.replace(/^\.\//, '')}`));
    expect(missing).toEqual([]);
  });

  test('tells nothing of the machine it was made on', () => {
    const places = [repository.replace(/\/$/, ''), process.env.HOME ?? ''].filter(
      (place) => place.length > 1,
    );
    const telling = [...files].filter(([, bytes]) => places.some((place) => bytes.includes(`${place}/`)));
    expect(telling.map(([path]) => path)).toEqual([]);
  });
});
