import { execFile } from 'node:child_process';
import { chmodSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

/** The program as it is shipped: one script with the word list beside it, below the package's own manifest. */
const root = fileURLToPath(new URL('../..', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'battledore-'));
const program = join(folder, 'package/server/dist/cli.js');
const desk = join(folder, 'desk');

const sequence = `title: At the pond
targets: { readable: 75, practice: 0, repeats: 0 }
lessons:
  - name: "1"
    spellings: [m as in mud, a as in map, p as in pan, n as in net, e as in net, t as in top]
    high-frequency words: [the]
`;
const passing = '---\nlesson: "1"\n---\nThe net. The map.\n';
const short = '---\nlesson: "1"\n---\nThe night.\n';

beforeAll(async () => {
  mkdirSync(dirname(program), { recursive: true });
  await build({
    absWorkingDir: root,
    entryPoints: ['server/src/cli.ts'],
    outfile: program,
    bundle: true,
    platform: 'node',
    format: 'cjs',
    target: 'node20',
    mainFields: ['module', 'main'],
    define: { 'import.meta.url': 'importMetaUrl' },
    banner: { js: 'const importMetaUrl = require("node:url").pathToFileURL(__filename).href;' },
    logLevel: 'error',
  });
  symlinkSync(join(root, 'server/generated/words.bin'), join(dirname(program), 'words.bin'));
  symlinkSync(join(root, 'package.json'), join(folder, 'package/package.json'));
  put('sequence.yaml', sequence);
  put('passing.md', passing);
  put('short.md', short);
  put('marked.md', `\ufeff${passing}`);
  put('latin.md', Buffer.from([0x2d, 0x2d, 0x2d, 0x0a, 0xe9, 0xff]));
  put('large.md', Buffer.alloc(5_000_001, 'a'));
  put('circle/passing.md', passing);
  symlinkSync(join(desk, 'circle'), join(desk, 'circle/again'));
}, 60_000);

afterAll(() => rmSync(folder, { recursive: true, force: true }));

function put(name: string, content: string | Buffer): void {
  mkdirSync(dirname(join(desk, name)), { recursive: true });
  writeFileSync(join(desk, name), content);
}

interface Run {
  readonly exitCode: number;
  readonly output: string;
  readonly errors: string;
}

/** Runs the program in the desk folder as a process of its own. */
function battledore(...given: readonly string[]): Promise<Run> {
  return new Promise((resolve) => {
    execFile(process.execPath, [program, ...given], { cwd: desk }, (fault, output, errors) => {
      const exitCode = fault === null ? 0 : typeof fault.code === 'number' ? fault.code : -1;
      resolve({ exitCode, output, errors });
    });
  });
}

describe('the program', () => {
  it.each([
    [['check', 'passing.md'], 0, 'passes', ''],
    [['check', 'short.md'], 1, 'falls short', ''],
    [['check', 'passing.md', 'short.md'], 1, '1 passes, 1 falls short', ''],
    [['check', 'marked.md'], 0, 'passes', ''],
    [['check', 'circle'], 0, '1 story checked', ''],
    [['check', 'no.md'], 2, '', 'no.md  There is no such file or folder.'],
    [['check', 'passing.md/more.md'], 2, '', 'There is no such file or folder.'],
    [['check', 'latin.md'], 2, '', 'latin.md  The file cannot be read: it is not text in UTF-8.'],
    [['check', 'large.md'], 2, '', 'large.md  The file is too large'],
    [['check', '--format', 'xml', '.'], 2, '', '“xml” is not a format'],
    [['sounds', 'cake'], 0, 'c  a_e  k', ''],
    [['--help'], 0, 'Usage: battledore', ''],
    [[], 2, '', 'Which command?'],
  ])('%j ends with %i', async (given, exitCode, output, errors) => {
    const run = await battledore(...given);
    expect(run.output).toContain(output);
    expect(run.errors).toContain(errors);
    expect(run.exitCode).toBe(exitCode);
    if (errors === '') expect(run.errors).toBe('');
    if (output === '') expect(run.output).toBe('');
  });

  it('prints its version', async () => {
    expect((await battledore('--version')).output).toMatch(/^battledore \d+\.\d+\.\d+\n$/);
  });

  it('is called by npx in the folder it was built in', async () => {
    chmodSync(program, 0o755);
    const output = await new Promise((resolve) => {
      const call = ['--no', 'battledore', 'sounds', 'cake'];
      execFile('npx', call, { cwd: join(folder, 'package'), shell: true }, (_, written) => resolve(written));
    });
    expect(output).toContain('c  a_e  k');
  }, 30_000);

  it('writes JSON without colours or anything else', async () => {
    const { output } = await battledore('check', '--format', 'json', 'short.md');
    expect(JSON.parse(output).stories[0]).toMatchObject({ path: 'short.md', readable: 0.5, passes: false });
  });

  it('tells of a fault with the code of a call that could not be used', async () => {
    rmSync(join(folder, 'package/package.json'));
    const { exitCode, errors } = await battledore('--help');
    symlinkSync(join(root, 'package.json'), join(folder, 'package/package.json'));
    expect(exitCode).toBe(2);
    expect(errors).toContain('Battledore stopped');
  });
});
