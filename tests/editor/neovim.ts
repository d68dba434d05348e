import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Checks, expectSame } from './checks.ts';
import { findProgram, tryToInstall } from './debian.ts';
import { storyName, type WritingDesk } from './writing-desk.ts';

interface Seen {
  readonly timeout?: string;
  readonly milliseconds: number;
  readonly opened: readonly Mark[];
  readonly written: readonly Mark[];
  readonly hover: string;
}

interface Mark {
  readonly line: number;
  readonly column: number;
  readonly message: string;
}

/**
 * Talks to the packaged server over standard input and output with a client that others have written: Neovim's own.
 *
 * @param server the folder of the unpacked package
 */
export async function checkNeovim(checks: Checks, desk: WritingDesk, server: string): Promise<void> {
  await checks.check('Neovim marks, explains and follows edits through its own language client', async () => {
    if (findProgram('nvim') === undefined) tryToInstall(['neovim'], console.log);
    const program = findProgram('nvim');
    if (program === undefined) throw new Error('Neovim is missing (Debian: apt-get install neovim).');
    const script = fileURLToPath(new URL('neovim.lua', import.meta.url));
    const output = execFileSync(program, ['--headless', '--noplugin', '-u', 'NONE', '-S', script], {
      encoding: 'utf8',
      timeout: 60_000,
      env: {
        ...process.env,
        BATTLEDORE_NODE: process.execPath,
        BATTLEDORE_SERVER: join(server, 'server/dist/node.js'),
        BATTLEDORE_STORY: join(desk.folder, storyName),
      },
    });
    const seen: Seen = JSON.parse(output.trim().split('\n').at(-1) ?? '');
    if (seen.timeout !== undefined) throw new Error(`Neovim waited in vain for ${seen.timeout}.`);
    const night = seen.opened.find((mark) => mark.message.includes('night'));
    expectSame([night?.line, night?.column], [desk.night.line, desk.night.column], 'the place of "night"');
    expectSame(
      seen.written.some((mark) => mark.message.includes('might')),
      true,
      '"might" is marked',
    );
    expectSame(seen.hover.includes('igh'), true, `the hover names the spelling: ${seen.hover}`);
    return `first marks after ${seen.milliseconds.toFixed(0)} ms`;
  });
}
