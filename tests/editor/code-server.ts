import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { CodeServer } from './code-server-install.ts';

/** A code-server that is running with an extension installed. */
export interface RunningCodeServer {
  /** The address of the page that opens a folder with one of its files. */
  addressOf(folder: string, file: string): string;
  /** Ends it with all that it started, and clears what it wrote. */
  stop(): void;
}

/**
 * Installs a .vsix into a fresh code-server and starts it on the loopback address. Everything it writes is below one
 * temporary folder.
 *
 * @param settings the user's settings
 * @throws Error when it does not come up within 30 seconds.
 */
export async function startCodeServer(
  program: CodeServer,
  vsix: string,
  settings: Readonly<Record<string, unknown>>,
): Promise<RunningCodeServer> {
  // The name is short because sockets are made in there, whose paths may have about 100 characters.
  const home = mkdtempSync(join(tmpdir(), 'bd-'));
  mkdirSync(join(home, 'user/User'), { recursive: true });
  writeFileSync(join(home, 'user/User/settings.json'), JSON.stringify(settings, null, 2));
  const environment = environmentIn(home);
  const folders = ['--user-data-dir', join(home, 'user'), '--extensions-dir', join(home, 'extensions')];
  try {
    execFileSync(program.node, [program.entry, ...folders, '--install-extension', vsix], {
      env: environment,
      stdio: ['ignore', 'ignore', 'inherit'],
    });
  } catch (error) {
    rmSync(home, { recursive: true, force: true });
    throw error;
  }
  const authority = `127.0.0.1:${await freePort()}`;
  const child = spawn(
    program.node,
    [
      ...[program.entry, '--auth', 'none', '--bind-addr', authority],
      ...['--disable-telemetry', '--disable-update-check', '--disable-workspace-trust'],
      ...['--disable-getting-started-override', '--disable-proxy'],
      ...['--idle-timeout-seconds', '120', '--reconnection-grace-time', '30'],
      ...folders,
    ],
    { env: environment, detached: true, stdio: 'ignore' },
  );
  const stop = stopper(child, home);
  try {
    await untilHealthy(child, `http://${authority}/healthz`);
  } catch (error) {
    stop();
    throw error;
  }
  return { addressOf: (folder, file) => addressOf(authority, folder, file), stop };
}

function environmentIn(home: string): NodeJS.ProcessEnv {
  const environment: NodeJS.ProcessEnv = {
    ...process.env,
    HOME: home,
    XDG_CONFIG_HOME: join(home, 'config'),
    XDG_DATA_HOME: join(home, 'data'),
    XDG_CACHE_HOME: join(home, 'cache'),
    XDG_RUNTIME_DIR: home,
    // An empty gallery: nothing is looked up outside this machine.
    EXTENSIONS_GALLERY: '{}',
  };
  delete environment.PORT;
  delete environment.VSCODE_IPC_HOOK_CLI;
  return environment;
}

/** The extension host outlives the server for hours when it is left alone, so the whole group of processes is ended. */
function stopper(child: ChildProcess, home: string): () => void {
  const stop = (): void => {
    process.off('exit', stop);
    process.off('SIGINT', interrupt);
    process.off('SIGTERM', interrupt);
    try {
      if (child.pid !== undefined) process.kill(-child.pid, 'SIGKILL');
    } catch {
      // It has ended by itself.
    }
    rmSync(home, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 });
  };
  const interrupt = (): void => process.exit(130);
  process.once('exit', stop);
  process.once('SIGINT', interrupt);
  process.once('SIGTERM', interrupt);
  return stop;
}

async function untilHealthy(child: ChildProcess, address: string): Promise<void> {
  for (const end = Date.now() + 30_000; Date.now() < end && child.exitCode === null; ) {
    const answer = await fetch(address).catch(() => undefined);
    if (answer?.ok) return;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  throw new Error('code-server did not start.');
}

function addressOf(authority: string, folder: string, file: string): string {
  const payload = [['openFile', `vscode-remote://${authority}${folder}/${file}`]];
  return `http://${authority}/?folder=${encodeURIComponent(folder)}&payload=${encodeURIComponent(JSON.stringify(payload))}`;
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer().once('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      server.close(() => resolve(typeof address === 'object' && address !== null ? address.port : 0));
    });
  });
}
