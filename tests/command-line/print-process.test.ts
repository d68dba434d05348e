import { execFile } from 'node:child_process';
import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createContext, runInContext } from 'node:vm';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  hillPicture,
  numberedPages,
  orderOf,
  printed,
  printSequence,
  storyToPrint,
} from '../support/printed-story.ts';

/** The program as `npm run build` leaves it. */
const program = fileURLToPath(new URL('../../server/dist/cli.js', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'battledore-print-'));
const desk = join(folder, 'desk');

const put = (path: string, content: string): void => writeFileSync(join(desk, path), content);
const story = (picture: string): string =>
  `---\ntitle: The Box\nlesson: "2"\n---\n![A hill](${picture})\nThe box was red.\n`;

beforeAll(() => {
  mkdirSync(desk);
  put('sequence.yaml', printSequence);
  put('hill.svg', hillPicture);
  put('box.md', story('hill.svg'));
  writeFileSync(join(folder, 'secret.svg'), hillPicture);
  symlinkSync(join(folder, 'secret.svg'), join(desk, 'link.svg'));
  put('link.md', story('link.svg'));
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function print(...given: readonly string[]): Promise<{ code: number; output: string; errors: string }> {
  return await new Promise((resolve) => {
    execFile(process.execPath, [program, 'print', ...given], { cwd: desk }, (fault, output, errors) => {
      resolve({ code: typeof fault?.code === 'number' ? fault.code : 0, output, errors });
    });
  });
}

describe('the program', () => {
  it('writes a whole file and leaves nothing else', async () => {
    expect(await print('box.md', '--out', 'new/folder/box.pdf')).toEqual({
      code: 0,
      output: 'new/folder/box.pdf  2 pages\n',
      errors: '',
    });
    expect(readdirSync(join(desk, 'new/folder'))).toEqual(['box.pdf']);
    expect(readFileSync(join(desk, 'new/folder/box.pdf')).subarray(-6).toString()).toBe('%%EOF\n');
  });

  it('keeps what is there, unless it is asked', async () => {
    put('kept.pdf', 'mine');
    expect(await print('box.md', '--out', 'kept.pdf')).toMatchObject({ code: 2, output: '' });
    expect(readFileSync(join(desk, 'kept.pdf'), 'utf8')).toBe('mine');
    expect(await print('box.md', '--out', 'kept.pdf', '--overwrite')).toMatchObject({ code: 0 });
    expect(statSync(join(desk, 'kept.pdf')).size).toBeGreaterThan(5000);
  });

  it('does not follow a link out of the folder', async () => {
    const outcome = await print('link.md');
    expect(outcome).toMatchObject({ code: 2, output: '' });
    expect(outcome.errors).toContain('link.md:5:1  The picture “link.svg” leads out of');
  });

  it('says when the disk refuses, and leaves no part of a file', async () => {
    put('wall', 'a file');
    const outcome = await print('box.md', '--out', 'wall/box.pdf');
    expect(outcome.code).toBe(2);
    expect(outcome.errors).toContain('wall/box.pdf cannot be written');
    expect(readdirSync(desk).filter((name) => name.endsWith('.part'))).toEqual([]);
  });
});

describe('the bundles', () => {
  const bundle = (path: string): string =>
    readFileSync(fileURLToPath(new URL(`../../${path}`, import.meta.url)), 'utf8');
  const ofPrinting = ['StructTreeRoot', 'beginbfchar', 'FlateDecode'];

  it.each([
    'server/dist/node.js',
    'server/dist/browser.js',
    'server/dist/cli.js',
    'client/dist/node.js',
    'client/dist/browser.js',
  ])('%s has none of the code that makes PDF', (path) => {
    expect(ofPrinting.filter((word) => bundle(path).includes(word))).toEqual([]);
  });

  it('print.js has it, without Node and without a document', () => {
    const code = bundle('server/dist/print.js');
    expect(ofPrinting.filter((word) => !code.includes(word))).toEqual([]);
    expect(code).not.toMatch(/require\("(?:node:)?(?:fs|path|stream|zlib|crypto|buffer)"\)|document\.create/);
    expect(code.length).toBeLessThan(150_000);
  });

  it('print.js prints the same in a world that has the language and nothing else', () => {
    const world = createContext({});
    runInContext(bundle('server/dist/print.js'), world);
    world.order = { ...orderOf([storyToPrint(numberedPages(3))]) };
    const { bytes } = runInContext('battledorePrint.print(order)', world);
    expect(Buffer.compare(Buffer.from(bytes), printed('book', [storyToPrint(numberedPages(3))]).bytes)).toBe(
      0,
    );
  });
});
