import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync } from 'node:fs';
import { mkdir, mkdtemp, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterEach, beforeEach, expect, test } from 'vitest';
import {
  createProtocolConnection,
  type ProtocolConnection,
  type PublishDiagnosticsParams,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver-protocol/node';
import { smallSequence, storyAt } from '../support/small-lane.ts';

const program = fileURLToPath(new URL('../../server/dist/node.js', import.meta.url));
let folder: string;
let server: ChildProcess;
let connection: ProtocolConnection;

beforeEach(async () => {
  if (!existsSync(program)) throw new Error('The server is not built; run "npm run build" first.');
  folder = await mkdtemp(join(tmpdir(), 'battledore-'));
  server = spawn(process.execPath, [program, '--stdio'], { stdio: ['pipe', 'pipe', 'inherit'] });
  if (server.stdout === null || server.stdin === null) throw new Error('The server has no streams.');
  connection = createProtocolConnection(
    new StreamMessageReader(server.stdout),
    new StreamMessageWriter(server.stdin),
  );
  connection.onRequest('client/registerCapability', () => null);
  connection.listen();
});

afterEach(async () => {
  connection.dispose();
  server.kill();
  await rm(folder, { recursive: true, force: true });
});

/** Opens a story in the folder and gives what is found in it. */
async function marks(story: string, root = folder): Promise<readonly (string | number | undefined)[]> {
  await connection.sendRequest('initialize', {
    processId: process.pid,
    rootUri: null,
    workspaceFolders: [{ uri: pathToFileURL(root).href, name: 'lane' }],
    capabilities: {},
  });
  await connection.sendNotification('initialized', {});
  const published = new Promise<PublishDiagnosticsParams>((resolve) => {
    connection.onNotification('textDocument/publishDiagnostics', resolve);
  });
  const uri = pathToFileURL(join(root, 'a.md')).href;
  await connection.sendNotification('textDocument/didOpen', {
    textDocument: { uri, languageId: 'markdown', version: 1, text: story },
  });
  return (await published).diagnostics.map(({ code }) => code);
}

test('the built server reviews a story by the sequence on disk, and ends as it should', async () => {
  await writeFile(join(folder, 'sequence.yaml'), smallSequence);
  expect(await marks(storyAt('2', 'The night map sat.'))).toEqual(['untaught-spelling']);
  await connection.sendRequest('shutdown');
  const ended = once(server, 'exit');
  await connection.sendNotification('exit');
  expect((await ended)[0]).toBe(0);
});

test('it ends with 1 when it is told to go without a shutdown', async () => {
  await marks(storyAt('2', 'Map.'));
  const ended = once(server, 'exit');
  await connection.sendNotification('exit');
  expect((await ended)[0]).toBe(1);
});

test('it ends when its client is gone', async () => {
  await marks(storyAt('2', 'Map.'));
  const ended = once(server, 'exit');
  server.stdin?.end();
  expect((await ended)[0]).toBe(1);
});

test('it follows no link out of the workspace folder', async () => {
  const inside = join(folder, 'lane');
  await mkdir(inside);
  await writeFile(join(folder, 'secret.yaml'), smallSequence);
  await symlink(join(folder, 'secret.yaml'), join(inside, 'sequence.yaml'));
  expect(await marks(storyAt('2', 'The night map sat.'), inside)).toEqual(['sequence-problem']);
});
