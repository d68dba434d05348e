import { spawn, spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterAll, describe, expect, test } from 'vitest';
import { createMessageConnection, StreamMessageReader, StreamMessageWriter } from 'vscode-jsonrpc/node';

const root = fileURLToPath(new URL('../..', import.meta.url));
const trap = join(root, 'tests/safety/trap-network.cjs');
const folder = mkdtempSync(join(tmpdir(), 'battledore-network-'));
cpSync(join(root, 'samples'), folder, { recursive: true });
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const bundles = ['server/dist', 'client/dist'].flatMap((place) =>
  readdirSync(join(root, place))
    .filter((name) => name.endsWith('.js'))
    .map((name) => `${place}/${name}`),
);

function run(...words: readonly string[]) {
  return spawnSync(process.execPath, ['--require', trap, join(root, 'server/dist/cli.js'), ...words], {
    cwd: folder,
    encoding: 'utf8',
  });
}

describe('what is built', () => {
  test.each(bundles)('%s has no way to ask another machine', (bundle) => {
    const code = readFileSync(join(root, bundle), 'utf8');
    const ways =
      /\bfetch\s*\(|\bXMLHttpRequest\b|\bnew WebSocket\b|\bEventSource\b|\bsendBeacon\b|require\("(?:node:)?(?:https?|http2|tls|dgram|dns)"\)/g;
    expect(code.match(ways) ?? []).toEqual([]);
  });

  test('only the library of the language protocol knows of sockets, which nobody asks it for', () => {
    const withSockets = bundles.filter((bundle) =>
      /require\("(?:node:)?net"\)/.test(readFileSync(join(root, bundle), 'utf8')),
    );
    expect(withSockets).toEqual(['server/dist/node.js', 'client/dist/node.js']);
  });

  test('every address in it is a name of a standard, not a place to go to', () => {
    const addresses = bundles.flatMap((bundle) =>
      Array.from(
        readFileSync(join(root, bundle), 'utf8').matchAll(/\b(?:https?|wss?):\/\/[\w.-]+/g),
        ([found]) => found,
      ),
    );
    expect([...new Set(addresses)].sort()).toEqual(['http://www.w3.org', 'https://docs.oasis-open.org']);
  });
});

describe('at work, with every way out trapped', () => {
  test('the trap catches', () => {
    const { stderr } = spawnSync(process.execPath, ['--require', trap, '-e', 'fetch("http://example.org")'], {
      encoding: 'utf8',
    });
    expect(stderr).toContain('NETWORK fetch http://example.org');
  });

  test.each([
    ['check', '.'],
    ['sounds', 'cake'],
    ['words', '--lesson', '12'],
    ['chain', '--lesson', '12'],
    ['fit', '04-the-tin-man.md'],
    ['coverage', '.'],
    ['print', '04-the-tin-man.md', '--out', 'print'],
    ['print', '04-the-tin-man.md', '--teacher', '--out', 'print'],
  ])('battledore %s %s goes nowhere', (...words) => {
    const { stderr, stdout } = run(...words);
    expect(stderr).not.toContain('NETWORK');
    expect(stdout).not.toBe('');
  });

  test('the language server goes nowhere', async () => {
    const server = spawn(process.execPath, ['--require', trap, join(root, 'server/dist/node.js'), '--stdio']);
    let errors = '';
    server.stderr.setEncoding('utf8').on('data', (part: string) => {
      errors += part;
    });
    const connection = createMessageConnection(
      new StreamMessageReader(server.stdout),
      new StreamMessageWriter(server.stdin),
    );
    const marked = new Promise<{ readonly diagnostics: readonly unknown[] }>((resolve) => {
      connection.onNotification('textDocument/publishDiagnostics', resolve);
    });
    connection.onRequest('client/registerCapability', () => null);
    connection.listen();
    const uri = pathToFileURL(join(folder, '14-draft-the-long-pink-sock.md')).href;
    const textDocument = { uri };
    const position = { line: 15, character: 3 };
    await connection.sendRequest('initialize', {
      processId: null,
      rootUri: null,
      workspaceFolders: [{ uri: pathToFileURL(folder).href, name: 'samples' }],
      capabilities: { textDocument: { publishDiagnostics: {} } },
    });
    await connection.sendNotification('initialized', {});
    const text = readFileSync(fileURLToPath(uri), 'utf8');
    await connection.sendNotification('textDocument/didOpen', {
      textDocument: { uri, languageId: 'markdown', version: 1, text },
    });
    expect((await marked).diagnostics.length).toBeGreaterThan(0);
    await connection.sendRequest('textDocument/hover', { textDocument, position });
    await connection.sendRequest('textDocument/completion', { textDocument, position });
    await connection.sendRequest('textDocument/codeAction', {
      textDocument,
      range: { start: position, end: { line: 40, character: 0 } },
      context: { diagnostics: [] },
    });
    await connection.sendRequest('battledore/series', {});
    await connection.sendRequest('shutdown');
    await connection.sendNotification('exit');
    await new Promise((resolve) => server.once('exit', resolve));
    connection.dispose();
    expect(errors).toBe('');
  }, 20_000);
});
