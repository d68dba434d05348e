import { spawn } from 'node:child_process';
import { readFile, stat } from 'node:fs/promises';
import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { readStartArguments, startUsage } from './arguments.ts';
import { findFirstStory } from './first-story.ts';
import { type HostOptions, startWorkbenchHost, type WorkbenchHost } from './host.ts';

// A fixed port, because the browser keeps a writer's editor settings by the address.
const usualPort = 8746;
const repository = fileURLToPath(new URL('../..', import.meta.url));

await main();

async function main(): Promise<void> {
  const given = readStartArguments(process.argv.slice(2));
  if (typeof given === 'string') return fail(`${given}\n\n${startUsage}`);
  if (given.asksForHelp) return console.log(startUsage);

  // npm runs scripts in the repository; a folder is meant from where the writer is.
  const from = process.env.INIT_CWD ?? process.cwd();
  const folder = given.folder === undefined ? resolve(repository, 'samples') : resolve(from, given.folder);
  const isFolder = await stat(folder).then(
    (facts) => facts.isDirectory(),
    () => false,
  );
  if (!isFolder) return fail(`There is no folder ${folder}.`);
  const firstFile = await findFirstStory(folder);
  const options = {
    folder,
    extension: repository,
    ...(firstFile === undefined ? {} : { firstFile }),
    firstViews: [await firstViewOfExtension()],
    settings: startSettings(),
  };
  let host: WorkbenchHost;
  try {
    host = await startOnPort(options, given.port);
  } catch (error) {
    return fail((error as Error).message);
  }
  console.log(`Battledore has opened ${folder}
Write at  ${host.address}
Stories are saved to its files as you write, sequence.yaml when you save it. Stop with Ctrl+C.`);
  if (given.opensBrowser) openBrowser(host.address);
  for (const signal of ['SIGINT', 'SIGTERM'] as const) {
    process.once(signal, () => void host.stop().then(() => process.exit(0)));
  }
}

/** What makes the workbench quiet enough for someone who came to write. The writer's own settings go before these. */
function startSettings() {
  return {
    'workbench.startupEditor': 'none',
    'workbench.tips.enabled': false,
    'workbench.enableExperiments': false,
    'window.commandCenter': false,
    'telemetry.telemetryLevel': 'off',
    'extensions.ignoreRecommendations': true,
    'editor.minimap.enabled': false,
    'editor.wordWrap': 'on',
    // What a change of the lessons would do can be seen before it is saved.
    '[yaml]': { 'files.autoSave': 'off' },
  };
}

async function startOnPort(
  options: Omit<HostOptions, 'port'>,
  port: number | undefined,
): Promise<WorkbenchHost> {
  try {
    return await startWorkbenchHost({ ...options, port: port ?? usualPort });
  } catch (error) {
    const isTaken = (error as NodeJS.ErrnoException).code === 'EADDRINUSE';
    if (isTaken && port === undefined) return startWorkbenchHost({ ...options, port: 0 });
    if (isTaken) throw new Error(`Port ${port} is taken by another program.`);
    throw error;
  }
}

/** The gauge; the other views lie folded below it. */
async function firstViewOfExtension(): Promise<string> {
  const manifest: { contributes: { views: { battledore: { id: string }[] } } } = JSON.parse(
    await readFile(resolve(repository, 'package.json'), 'utf8'),
  );
  return manifest.contributes.views.battledore[0]?.id ?? '';
}

/** Opens the address in the user's browser where there is one; the address is printed anyway. */
function openBrowser(address: string): void {
  const hasScreen =
    process.platform !== 'linux' || Boolean(process.env.DISPLAY ?? process.env.WAYLAND_DISPLAY);
  if (process.env.CI || !hasScreen) return;
  const [program, ...words] =
    process.platform === 'win32'
      ? ['cmd', '/c', 'start', '', address]
      : [process.platform === 'darwin' ? 'open' : 'xdg-open', address];
  if (program === undefined) return;
  spawn(program, words, { stdio: 'ignore', detached: true })
    .on('error', () => {})
    .unref();
}

function fail(message: string): void {
  console.error(message);
  process.exitCode = 2;
}
