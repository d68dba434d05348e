/**
 * Builds everything that runs outside the source tree. `npm run build`; with `--development` readable code and
 * source maps, with `--watch` the same again after each change.
 *
 * Every bundle is CommonJS or a classic script, and the package has no `"type": "module"`: VS Code 1.91 loads an
 * extension by `require`, its browser host loads `.js` files only, and newer hosts take `type` for a promise that
 * the entry is a module. The `package.json` files of `server/`, `tests/` and `.config/` mark the TypeScript sources
 * as modules; `server/dist` marks itself as CommonJS again.
 */
import { chmod, copyFile, mkdir, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type BuildOptions, build, context } from 'esbuild';
import { fontFiles } from '../server/src/materials/layout/font-files.ts';
import { billOfMaterials } from './bill-of-materials.ts';
import { apart, bundleName, loadedApart } from './loaded-apart.ts';
import { withoutDocumentation, withoutExamples } from './without-documentation.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const watches = process.argv.includes('--watch');
const isDevelopment = watches || process.argv.includes('--development');

const shared: BuildOptions = {
  absWorkingDir: root,
  bundle: true,
  target: 'es2022',
  minify: !isDevelopment,
  sourcemap: isDevelopment ? 'linked' : false,
  legalComments: 'none',
  logLevel: 'warning',
};

/** Code for Node as CommonJS; `import.meta.url` keeps its meaning. */
const forNode: BuildOptions = {
  ...shared,
  platform: 'node',
  format: 'cjs',
  target: 'node20',
  mainFields: ['module', 'main'],
  define: { 'import.meta.url': 'importMetaUrl' },
  banner: { js: 'const importMetaUrl = require("node:url").pathToFileURL(__filename).href;' },
};

/** Code for a web page as a classic script. */
const forPage: BuildOptions = {
  ...shared,
  platform: 'browser',
  format: 'iife',
  mainFields: ['browser', 'module', 'main'],
};

/** Code for a web worker as a classic script; some packages have a browser version that needs a document. */
const forWorker: BuildOptions = { ...forPage, conditions: ['worker'] };

const bundles: readonly BuildOptions[] = [
  {
    ...forNode,
    plugins: [loadedApart(), withoutDocumentation],
    entryPoints: ['server/src/node.ts'],
    outfile: 'server/dist/node.js',
  },
  {
    ...forNode,
    plugins: [loadedApart(), withoutExamples],
    entryPoints: ['server/src/cli.ts'],
    outfile: 'server/dist/cli.js',
  },
  ...apart.map((module) => ({
    ...forNode,
    plugins: [loadedApart(module), withoutDocumentation],
    entryPoints: [module],
    outfile: `server/dist/${bundleName(module)}`,
  })),
  {
    ...forWorker,
    plugins: [withoutDocumentation],
    entryPoints: ['server/src/browser.ts'],
    outfile: 'server/dist/browser.js',
  },
  {
    // Loaded when something is printed: by require on Node, as a script with one global name elsewhere.
    ...forWorker,
    globalName: 'battledorePrint',
    footer: { js: 'if (typeof module === "object") module.exports = battledorePrint;' },
    entryPoints: ['server/src/print.ts'],
    outfile: 'server/dist/print.js',
  },
  {
    ...forNode,
    external: ['vscode'],
    entryPoints: ['client/src/node.ts'],
    outfile: 'client/dist/node.js',
  },
  {
    ...forWorker,
    format: 'cjs',
    external: ['vscode'],
    entryPoints: ['client/src/browser.ts'],
    outfile: 'client/dist/browser.js',
  },
  {
    ...forPage,
    entryPoints: ['client/src/workshop/view/workshop.ts'],
    outfile: 'client/dist/workshop.js',
  },
  {
    ...forPage,
    entryPoints: ['client/src/preview/view/preview.ts'],
    outfile: 'client/dist/preview.js',
  },
  { ...forPage, entryPoints: ['client/src/series/view/series.ts'], outfile: 'client/dist/series.js' },
  { ...forPage, entryPoints: ['client/src/view/view.ts'], outfile: 'client/dist/view.js' },
];

await emptyOutput();
await copyGenerated();
await copyFonts();
await gatherSamples();
if (watches) {
  for (const options of bundles) {
    await (await context(options)).watch();
  }
  console.log('Watching; stop with Control+C.');
} else {
  const results = await Promise.all(bundles.map((options) => build({ ...options, metafile: true })));
  await listPackages(results.flatMap(({ metafile }) => Object.keys(metafile.inputs)));
  await chmod(join(root, 'server/dist/cli.js'), 0o755);
  await reportSizes();
}

/** Fresh folders, each saying that its `.js` files are CommonJS. */
async function emptyOutput(): Promise<void> {
  for (const folder of ['server/dist', 'client/dist']) {
    await rm(join(root, folder), { recursive: true, force: true });
    await mkdir(join(root, folder), { recursive: true });
    await writeFile(join(root, folder, 'package.json'), '{ "type": "commonjs" }\n');
  }
}

/** The lexicon and what else the build of the data has made goes beside the code that reads it. */
async function copyGenerated(): Promise<void> {
  const folder = join(root, 'server/generated');
  const files = (await readdir(folder)).filter((name) => name.endsWith('.bin'));
  if (files.length === 0) {
    throw new Error('server/generated holds no data; run "npm run lexicon" first.');
  }
  for (const name of files) {
    await copyFile(join(folder, name), join(root, 'server/dist', name));
  }
}

/** The fonts of what is printed, as their package has them. */
async function copyFonts(): Promise<void> {
  for (const name of Object.values(fontFiles)) {
    await copyFile(
      join(root, 'node_modules/@fontsource/andika/files', name),
      join(root, 'server/dist', name),
    );
  }
}

/** The sample stories as one file: a package in the browser has no folders that can be listed. */
async function gatherSamples(): Promise<void> {
  const folder = join(root, 'samples');
  const files = await readdir(folder, { recursive: true, withFileTypes: true });
  const paths = files.filter((file) => file.isFile()).map((file) => join(file.parentPath, file.name));
  const samples: Record<string, string> = {};
  for (const path of paths.sort())
    samples[relative(folder, path).replaceAll('\\', '/')] = await readFile(path, 'utf8');
  await writeFile(join(root, 'client/dist/samples.json'), JSON.stringify(samples));
}

/** Writes down which packages have gone into the bundles: for NOTICE, and as a bill of materials. */
async function listPackages(inputs: readonly string[]): Promise<void> {
  const names = inputs.flatMap((path) => /node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(path)?.[1] ?? []);
  const folder = join(root, '.cache');
  await mkdir(folder, { recursive: true });
  const packages = [...new Set(names)].sort();
  await writeFile(join(folder, 'bundled-packages.txt'), `${packages.join('\n')}\n`);
  await writeFile(join(root, 'server/dist/bill-of-materials.json'), await billOfMaterials(root, packages));
}

async function reportSizes(): Promise<void> {
  for (const { outfile } of bundles) {
    if (outfile !== undefined) {
      const { size } = await stat(join(root, outfile));
      console.log(`${outfile.padEnd(24)} ${(size / 1000).toFixed(0).padStart(5)} kB`);
    }
  }
}
