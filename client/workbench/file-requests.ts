import type { IncomingMessage, ServerResponse } from 'node:http';
import { type Folder, FolderError } from './folder.ts';

/** No story and no picture of one is larger; it keeps a slip from filling the memory. */
const largestUpload = 64 * 1024 * 1024;

/**
 * Answers one request of the file-system extension. The action and the path are in the query; a written file is the
 * body. Errors of the folder become HTTP statuses with a sentence, all others are thrown.
 */
export async function answerFileRequest(
  folder: Folder,
  request: IncomingMessage,
  query: URLSearchParams,
  response: ServerResponse,
): Promise<void> {
  try {
    const body = await perform(folder, request, query);
    const isBytes = Buffer.isBuffer(body);
    response.writeHead(200, {
      'content-type': isBytes ? 'application/octet-stream' : 'application/json; charset=utf-8',
      'cache-control': 'no-store',
    });
    response.end(isBytes ? body : JSON.stringify(body ?? null));
  } catch (error) {
    const status = error instanceof FolderError ? error.status : statusOf(error);
    if (status === undefined) throw error;
    response.writeHead(status, { 'content-type': 'text/plain; charset=utf-8' }).end((error as Error).message);
  }
}

async function perform(folder: Folder, request: IncomingMessage, query: URLSearchParams): Promise<unknown> {
  const path = query.get('path') ?? '';
  const isSet = (name: string) => query.get(name) === 'true';
  switch (`${request.method} ${query.get('action')}`) {
    case 'GET facts':
      return folder.facts(path);
    case 'GET list':
      return folder.list(path);
    case 'GET read':
      return folder.read(path);
    case 'POST write':
      return folder.write(path, await bodyOf(request), {
        create: isSet('create'),
        overwrite: isSet('overwrite'),
      });
    case 'POST make-folder':
      return folder.makeFolder(path);
    case 'POST delete':
      return folder.delete(path);
    case 'POST rename':
      return folder.rename(path, query.get('to') ?? '', { overwrite: isSet('overwrite') });
    default:
      throw new FolderError(400, 'There is no such action.');
  }
}

async function bodyOf(request: IncomingMessage): Promise<Buffer> {
  const parts: Buffer[] = [];
  let size = 0;
  for await (const part of request) {
    size += part.length;
    if (size > largestUpload) throw new FolderError(413, 'The file is too large.');
    parts.push(part);
  }
  return Buffer.concat(parts);
}

/** The status of an error of the disk that the editor knows how to tell; none for all others. */
function statusOf(error: unknown): number | undefined {
  const code = (error as NodeJS.ErrnoException).code;
  if (code === 'ENOENT' || code === 'ENOTDIR') return 404;
  if (code === 'EEXIST' || code === 'ENOTEMPTY' || code === 'EISDIR') return 409;
  if (code === 'EACCES' || code === 'EPERM' || code === 'EROFS') return 403;
  return undefined;
}
