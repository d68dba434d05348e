import { execFileSync, spawnSync } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { smallSequence, storyAt } from '../support/small-lane.ts';

/** A repository with the sample hook, which runs the program from its sources. */
const root = fileURLToPath(new URL('../..', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'battledore-hook-'));
const passing = storyAt('1', 'The map.');
const short = storyAt('1', `${'The map '.repeat(11)}.`);
const environment = {
  ...process.env,
  BATTLEDORE: `node --import ${join(root, 'node_modules/tsx/dist/loader.mjs')} ${join(root, 'server/src/cli.ts')}`,
  GIT_CONFIG_GLOBAL: join(folder, 'none'),
  GIT_CONFIG_NOSYSTEM: '1',
};

function git(...given: readonly string[]): string {
  return execFileSync('git', ['-c', 'user.name=Writer', '-c', 'user.email=writer@example.org', ...given], {
    cwd: folder,
    encoding: 'utf8',
    env: environment,
  });
}

function put(path: string, text: string): void {
  mkdirSync(join(folder, path, '..'), { recursive: true });
  writeFileSync(join(folder, path), text);
}

/** Runs the hook on what is staged. */
function hook(): { code: number | null; said: string } {
  const { status, stdout, stderr } = spawnSync(join(folder, '.git/hooks/pre-commit'), {
    cwd: folder,
    encoding: 'utf8',
    env: environment,
  });
  return { code: status, said: stdout + stderr };
}

beforeEach(() => {
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder);
  git('init', '-q');
  copyFileSync(join(root, 'samples/for-teams/pre-commit'), join(folder, '.git/hooks/pre-commit'));
  put('sequence.yaml', smallSequence);
  put('old.md', passing);
  put('notes.md', '# Notes\n\nlesson: not a story\n');
  git('add', '-A');
  git('commit', '-q', '-m', 'Start', '--no-verify');
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('the sample hook for git', () => {
  it('lets a passing story through, and files that are no stories', () => {
    put('a folder/the map.md', passing);
    put('notes.md', '# More notes\n');
    git('add', '-A');
    expect(hook()).toEqual({ code: 0, said: expect.stringMatching(/1 story checked by .*: it passes\./) });
  });

  it('refuses a commit with a story that falls short', () => {
    put('new.md', short);
    git('add', '-A');
    expect(hook()).toEqual({ code: 1, said: expect.stringContaining('new.md') });
  });

  it('looks at what is staged, not at what the file holds now', () => {
    put('new.md', passing);
    git('add', '-A');
    put('new.md', short);
    expect(hook().code).toBe(0);
    git('add', '-A');
    put('new.md', passing);
    expect(hook().code).toBe(1);
  });

  it('checks every story when the sequence is changed', () => {
    put('sequence.yaml', smallSequence.replace('p as in pan', 'b as in bat'));
    git('add', '-A');
    const { code, said } = hook();
    expect(said).toContain('old.md');
    // The target of this sequence is 0 percent, so that only the sequence's own mistakes could stop it.
    expect(code).toBe(0);
  });

  it('has nothing to do without a story', () => {
    put('notes.md', '# Other notes\n');
    git('add', '-A');
    expect(hook()).toEqual({ code: 0, said: '' });
  });
});
