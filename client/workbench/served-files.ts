import { createReadStream } from 'node:fs';
import { readFile, realpath, stat } from 'node:fs/promises';
import type { ServerResponse } from 'node:http';
import { extname, join, sep } from 'node:path';

const contentTypes: Readonly<Record<string, string>> = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.ico': 'image/x-icon',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.md': 'text/markdown; charset=utf-8',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.ttf': 'font/ttf',
  '.wasm': 'application/wasm',
  '.woff': 'font/woff',
  '.woff2': 'font/woff2',
};

/** A set of files that may be read by anyone who passed the guard: the workbench, or an extension. */
export interface ServedFiles {
  /** The folder they are in. */
  readonly root: string;
  /** The paths, relative to the root, that are served: a file, or a folder with all below it. None means all. */
  readonly parts?: readonly string[];
}

/** The place on the disk of a served path, or nothing when it is not served. */
export async function findServedFile(files: ServedFiles, path: string): Promise<string | undefined> {
  const names = path.split('/');
  if (names.some((name) => name === '' || name === '.' || name === '..' || /[\\\0:]/.test(name)))
    return undefined;
  if (files.parts?.every((part) => path !== part && !path.startsWith(`${part}/`))) return undefined;
  try {
    const root = await realpath(files.root);
    const place = await realpath(join(root, ...names));
    return place.startsWith(root + sep) && (await stat(place)).isFile() ? place : undefined;
  } catch {
    return undefined;
  }
}

/**
 * The parts of an extension that are served: its manifest and what the manifest's `files` would put into the package.
 *
 * @throws Error when the manifest cannot be read.
 */
export async function servedExtension(root: string): Promise<ServedFiles> {
  const manifest: unknown = JSON.parse(await readFile(join(root, 'package.json'), 'utf8'));
  const listed = (manifest as { files?: unknown }).files;
  if (!Array.isArray(listed)) return { root };
  const parts = listed.map((pattern) =>
    String(pattern)
      .replace(/\/?\*.*$/, '')
      .replace(/\/$/, ''),
  );
  return { root, parts: ['package.json', 'package.nls.json', ...parts] };
}

/** Sends a file of the disk. The browser asks again each time, so that a new build is seen at once. */
export async function sendFile(response: ServerResponse, place: string): Promise<void> {
  const facts = await stat(place);
  response.writeHead(200, {
    'content-type': contentTypes[extname(place)] ?? 'application/octet-stream',
    'content-length': facts.size,
    'cache-control': 'no-cache',
  });
  createReadStream(place)
    .on('error', () => response.destroy())
    .pipe(response);
}
