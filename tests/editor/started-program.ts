import { spawn } from 'node:child_process';
import { repository } from './package.ts';

/** `npm start`, as a writer runs it. */
export interface StartedProgram {
  /** The address that it printed. */
  readonly address: string;
  /** Ends it as Ctrl+C does. */
  stop(): Promise<void>;
}

/**
 * Runs `npm start` on a folder, without a browser, and waits for the address.
 *
 * @throws Error with its output when it ends before it has printed one.
 */
export async function runNpmStart(folder: string): Promise<StartedProgram> {
  const child = spawn('npm', ['start', '--', folder, '--no-open', '--port', '0'], {
    cwd: repository,
    detached: true,
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const ended = new Promise<void>((resolve) => child.once('exit', () => resolve()));
  const endGroup = () => {
    try {
      if (child.pid !== undefined) process.kill(-child.pid, 'SIGINT');
    } catch {
      // It has ended by itself.
    }
  };
  process.once('exit', endGroup);
  let output = '';
  const address = await new Promise<string>((resolve, reject) => {
    for (const stream of [child.stdout, child.stderr]) {
      stream.setEncoding('utf8').on('data', (part: string) => {
        output += part;
        const found = /http:\/\/127\.0\.0\.1:\d+\//.exec(output)?.[0];
        if (found !== undefined) resolve(found);
      });
    }
    child.once('exit', () => reject(new Error(`npm start has ended:\n${output}`)));
  });
  return {
    address,
    stop: async () => {
      process.off('exit', endGroup);
      endGroup();
      await ended;
    },
  };
}
