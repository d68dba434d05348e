import { type ChildProcess, spawn } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import {
  createMessageConnection,
  type MessageConnection,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-jsonrpc/node';
import type { StoriesParams } from '../../server/src/editor/protocol.ts';
import { type Spread, spreadOf } from './measures.ts';
import { storyOf } from './stories.ts';

/** What the index of a whole workspace costs, measured from outside on the server's own process. Milliseconds, megabytes. */
export interface SeriesFigures {
  readonly stories: number;
  /** From the start of the process to the first word of all stories. */
  readonly cold: Spread;
  /** A story changes on disk, until the client is told. */
  readonly oneStory: Spread;
  /** The first lesson changes on disk, so that every story has to be judged again. */
  readonly firstLesson: Spread;
  /** A lesson in the middle changes. */
  readonly middleLesson: Spread;
  /** The greatest resident set of the process so far, after all of this. */
  readonly memory: number;
}

const wordsOfStory = 150;

/** Words with ie as in pie. */
const keyWords = ['tie', 'lie', 'die', 'ties', 'lies', 'dies', 'pies', 'tied', 'lied', 'died'];

/** Measures a workspace of so many generated stories of 150 words; `starts` cold starts, at most ten `changes` of each kind. */
export async function measureSeries(
  server: string,
  folder: string,
  {
    stories,
    starts,
    changes,
  }: { readonly stories: number; readonly starts: number; readonly changes: number },
): Promise<SeriesFigures> {
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  const sequence = readFileSync(new URL('../../samples/sequence.yaml', import.meta.url), 'utf8');
  const lessons = [...sequence.matchAll(/^ {2}- name: "(.*)"$/gm)].map(([, name]) => name ?? '');
  const put = (name: string, text: string): string => {
    writeFileSync(join(folder, name), text);
    return pathToFileURL(join(folder, name)).href;
  };
  put('sequence.yaml', sequence);
  for (let index = 0; index < stories; index++) {
    put(`${index}.md`, storyOf(wordsOfStory, lessons[index % lessons.length] ?? '', index));
  }
  const cold: number[] = [];
  let desk = await openDesk(server, folder);
  cold.push(desk.cold);
  while (cold.length < starts) {
    desk.stop();
    desk = await openDesk(server, folder);
    cold.push(desk.cold);
  }
  const changed = async (name: string, version: (change: number) => string): Promise<Spread> => {
    const times: number[] = [];
    for (let change = 0; change < changes; change++) {
      const uri = put(name, version(change));
      times.push(await desk.change(uri));
    }
    return spreadOf(times);
  };
  // No version comes twice, so that nothing that was judged before can be of use again; each changes some figure.
  const oneStory = await changed('0.md', (change) =>
    storyOf(wordsOfStory, lessons[20] ?? '', stories + change),
  );
  const firstLesson = await changed('sequence.yaml', (change) =>
    sequence.replace(
      /\bthe\b(?=[,\]])/,
      change % 2 === 0 ? (keyWords[change] ?? '') : `the, ${keyWords[change]}`,
    ),
  );
  const middleLesson = await changed('sequence.yaml', (change) =>
    sequence.replace(
      'igh as in light, ie as in pie',
      `${change % 2 === 0 ? 'x as in box' : 'igh as in light'}, ie as in ${keyWords[change]}`,
    ),
  );
  const memory = desk.memory();
  desk.stop();
  return { stories, cold: spreadOf(cold), oneStory, firstLesson, middleLesson, memory };
}

/** A client with no document open. */
async function openDesk(server: string, folder: string) {
  const start = performance.now();
  const child: ChildProcess = spawn(process.execPath, [server, '--stdio'], {
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  const { stdin, stdout } = child;
  if (!stdin || !stdout) throw new Error('The server has no standard streams.');
  const connection: MessageConnection = createMessageConnection(
    new StreamMessageReader(stdout),
    new StreamMessageWriter(stdin),
  );
  let told: ((params: StoriesParams) => void) | undefined;
  const nextWord = (): Promise<StoriesParams> =>
    new Promise((resolve, reject) => {
      const timer = setTimeout(() => reject(new Error('The server said nothing for 30 seconds.')), 30_000);
      told = (params) => {
        clearTimeout(timer);
        resolve(params);
      };
    });
  connection.onNotification('battledore/stories', (params: StoriesParams) => told?.(params));
  connection.onRequest('workspace/configuration', () => [null]);
  connection.onRequest('client/registerCapability', () => null);
  connection.listen();
  const first = nextWord();
  const uri = pathToFileURL(folder).href;
  await connection.sendRequest('initialize', {
    processId: process.pid,
    rootUri: uri,
    workspaceFolders: [{ uri, name: 'bench' }],
    capabilities: {
      workspace: { workspaceFolders: true, didChangeWatchedFiles: { dynamicRegistration: true } },
    },
  });
  await connection.sendNotification('initialized', {});
  await first;
  return {
    cold: performance.now() - start,
    change: async (changedUri: string): Promise<number> => {
      const word = nextWord();
      const from = performance.now();
      await connection.sendNotification('workspace/didChangeWatchedFiles', {
        changes: [{ uri: changedUri, type: 2 }],
      });
      await word;
      return performance.now() - from;
    },
    /** Linux only; NaN elsewhere. */
    memory: (): number => {
      try {
        const line = /VmHWM:\s+(\d+) kB/.exec(readFileSync(`/proc/${child.pid}/status`, 'utf8'));
        return Number(line?.[1]) / 1024;
      } catch {
        return Number.NaN;
      }
    },
    stop: (): void => {
      connection.dispose();
      child.kill();
    },
  };
}
