import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { keyHeader } from '../../client/workbench/agreement.ts';
import { findFirstStory } from '../../client/workbench/first-story.ts';
import { startWorkbenchHost, type WorkbenchHost } from '../../client/workbench/host.ts';

let disk: string;
let host: WorkbenchHost;
let key: string;

beforeAll(async () => {
  disk = mkdtempSync(join(tmpdir(), 'battledore-host-'));
  for (const folder of ['stories/art', 'extension/dist', 'extension/source']) {
    mkdirSync(join(disk, folder), { recursive: true });
  }
  writeFileSync(join(disk, 'secret.md'), 'secret');
  writeFileSync(join(disk, 'stories/one.md'), '---\nlesson: "1"\n---\n# One\n');
  writeFileSync(join(disk, 'stories/two-draft.md'), '---\ntitle: Two\nlesson: "1"\n---\n# Two\n');
  writeFileSync(join(disk, 'stories/about.md'), 'No story.\n');
  writeFileSync(join(disk, 'extension/package.json'), JSON.stringify({ files: ['dist/**/*.js'] }));
  writeFileSync(join(disk, 'extension/dist/main.js'), '// main');
  writeFileSync(join(disk, 'extension/source/main.ts'), '// source');
  symlinkSync(join(disk, 'secret.md'), join(disk, 'stories/link.md'));
  symlinkSync(disk, join(disk, 'stories/up'));
  symlinkSync(join(disk, 'stories/one.md'), join(disk, 'stories/same.md'));
  host = await startWorkbenchHost({
    folder: join(disk, 'stories'),
    extension: join(disk, 'extension'),
    port: 0,
  });
  key = /file-system\/([0-9a-f]+)/.exec(await (await fetch(`${host.address}options.js`)).text())?.[1] ?? '';
});

afterAll(async () => {
  await host.stop();
  rmSync(disk, { recursive: true, force: true });
});

/** Asks the host as plainly as possible: no client that tidies the path or forbids a header. */
function ask(
  path: string,
  how: { method?: string; headers?: Record<string, string>; body?: string } = {},
): Promise<{ status: number; text: string; location: string | undefined }> {
  const { hostname, port } = new URL(host.address);
  return new Promise((resolve, reject) => {
    const sent = request(
      { hostname, port, path, method: how.method ?? 'GET', headers: how.headers },
      (answer) => {
        let text = '';
        answer.setEncoding('utf8').on('data', (part) => {
          text += part;
        });
        answer.on('end', () =>
          resolve({ status: answer.statusCode ?? 0, text, location: answer.headers.location }),
        );
      },
    );
    sent.on('error', reject).end(how.body);
  });
}

function askFolder(action: string, path: string, more: { query?: string; body?: string } = {}) {
  const method = ['facts', 'list', 'read'].includes(action) ? 'GET' : 'POST';
  return ask(`/folder?action=${action}&path=${encodeURIComponent(path)}${more.query ?? ''}`, {
    method,
    headers: { [keyHeader]: key },
    ...(more.body === undefined ? {} : { body: more.body }),
  });
}

describe('what the host serves', () => {
  test.each([
    ['/', 200],
    ['/vscode/out/vs/loader.js', 200],
    ['/extension/dist/main.js', 200],
    ['/extension/source/main.ts', 404],
    ['/extension/../secret.md', 404],
    ['/extension/dist/..%2f..%2f..%2fsecret.md', 404],
    ['/vscode/%2e%2e/package.json', 404],
    ['/vscode/..%5c..%5cpackage.json', 404],
    ['/vscode//etc/passwd', 404],
    ['/vscode/%00', 404],
    ['/%', 404],
    ['//folder', 404],
    ['/stories/one.md', 404],
    ['/file-system/wrong/extension.js', 404],
  ])('%s: %i', async (path, status) => {
    expect((await ask(path)).status).toBe(status);
  });

  test('the page may talk to nobody but this server', async () => {
    const answer = await fetch(host.address);
    expect(answer.headers.get('content-security-policy')).toContain("connect-src 'self'");
    expect(answer.headers.get('access-control-allow-origin')).toBeNull();
  });

  test('another name of this machine leads to the same address', async () => {
    const { port } = new URL(host.address);
    const answer = await ask('/', { headers: { host: `localhost:${port}` } });
    expect(answer).toMatchObject({ status: 302, location: host.address });
  });

  test('it can be reached by the loopback address only', () => {
    expect(new URL(host.address).hostname).toBe('127.0.0.1');
  });
});

describe('the opened folder', () => {
  test('is not read without the key', async () => {
    expect((await ask('/folder?action=read&path=one.md')).status).toBe(403);
    const wrong = { headers: { [keyHeader]: 'f'.repeat(key.length) } };
    expect((await ask('/folder?action=read&path=one.md', wrong)).status).toBe(403);
  });

  test('is not read by another page, even with the key', async () => {
    const headers = { [keyHeader]: key, origin: 'http://stories.example' };
    expect((await ask('/folder?action=read&path=one.md', { headers })).status).toBe(403);
    const renamed = { [keyHeader]: key, host: 'stories.example' };
    expect((await ask('/folder?action=read&path=one.md', { headers: renamed })).status).toBe(403);
  });

  test.each([
    '../secret.md',
    'art/../../secret.md',
    '/etc/passwd',
    'link.md',
    'up/secret.md',
    'a\\b',
    'a\0b',
    '.',
  ])('nothing outside it is read, written or deleted: %s', async (path) => {
    expect((await askFolder('read', path)).status).toBe(403);
    const forced = { query: '&create=true&overwrite=true', body: 'spoilt' };
    expect((await askFolder('write', path, forced)).status).toBe(403);
    expect((await askFolder('delete', path)).status).toBe(403);
    expect((await askFolder('rename', path, { query: '&to=stolen.md' })).status).toBe(403);
    expect(
      (await askFolder('rename', 'about.md', { query: `&to=${encodeURIComponent(path)}` })).status,
    ).not.toBe(200);
    expect(readFileSync(join(disk, 'secret.md'), 'utf8')).toBe('secret');
  });

  test('itself is neither deleted nor moved', async () => {
    expect((await askFolder('delete', '')).status).toBe(403);
    expect((await askFolder('rename', '', { query: '&to=other' })).status).toBe(403);
  });

  test('lists what is in it, without links that lead out', async () => {
    const names = JSON.parse((await askFolder('list', '')).text).map((entry: { name: string }) => entry.name);
    expect(names.sort()).toEqual(['about.md', 'art', 'one.md', 'same.md', 'two-draft.md']);
  });

  test('is written, moved and cleared as the editor asks', async () => {
    const create = { query: '&create=true&overwrite=false', body: 'Größe 🐟' };
    expect((await askFolder('write', 'new.md', create)).status).toBe(200);
    expect(readFileSync(join(disk, 'stories/new.md'), 'utf8')).toBe('Größe 🐟');
    expect((await askFolder('write', 'new.md', create)).status).toBe(409);
    const change = { query: '&create=false&overwrite=true', body: 'changed' };
    expect((await askFolder('write', 'other.md', change)).status).toBe(404);
    expect((await askFolder('make-folder', 'unit')).status).toBe(200);
    expect((await askFolder('rename', 'new.md', { query: '&to=unit/new.md' })).status).toBe(200);
    expect((await askFolder('read', 'unit/new.md')).text).toBe('Größe 🐟');
    expect(JSON.parse((await askFolder('facts', 'unit/new.md')).text)).toMatchObject({
      kind: 'file',
      size: 12,
    });
    expect((await askFolder('delete', 'unit')).status).toBe(200);
    expect((await askFolder('facts', 'unit/new.md')).status).toBe(404);
  });

  test('tells of changes on the disk', async () => {
    const stop = new AbortController();
    const answer = await fetch(`${host.address}folder/changes`, {
      headers: { [keyHeader]: key },
      signal: stop.signal,
    });
    const reader = (answer.body as ReadableStream<Uint8Array>).getReader();
    let told = '';
    // The first look is taken in the background; a change after it is told, one before it is part of it.
    const writing = setInterval(() => writeFileSync(join(disk, 'stories/art/note.md'), `${Date.now()}`), 100);
    try {
      while (!told.includes('note.md')) told += new TextDecoder().decode((await reader.read()).value);
    } finally {
      clearInterval(writing);
      stop.abort();
    }
    expect(told).toContain('"path":"art/note.md"');
  });

  test('opens on its draft', async () => {
    expect(await findFirstStory(join(disk, 'stories'))).toBe('two-draft.md');
    expect(await findFirstStory(join(disk, 'extension'))).toBeUndefined();
  });
});

test('a folder that is not there is an error with a sentence', async () => {
  const folder = join(disk, 'nowhere');
  await expect(startWorkbenchHost({ folder, extension: disk, port: 0 })).rejects.toThrow('nowhere');
});
