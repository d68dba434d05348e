import { readFile, realpath, stat } from 'node:fs/promises';
import { isAbsolute, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Files longer than this are not read at all, in bytes; no sequence comes near it. */
const largestRead = 16 * 1024 * 1024;

/**
 * Reads a text file as UTF-8, for the server on Node. Null when there is no file, or when it or the folder is not where
 * it claims to be: symbolic links are followed, and what they lead to must lie inside `folder` too. Other faults of the
 * disk reject.
 */
export async function readFileInside(uri: string, folder: string): Promise<string | null> {
  try {
    const [file, root] = await Promise.all([realpath(fileURLToPath(uri)), realpath(fileURLToPath(folder))]);
    const way = relative(root, file);
    if (way === '' || way === '..' || way.startsWith(`..${sep}`) || isAbsolute(way)) return null;
    const { size } = await stat(file);
    if (size > largestRead) throw new Error(`The file has ${size} bytes, more than is ever read.`);
    return await readFile(file, 'utf8');
  } catch (fault) {
    if (isAbsence(fault)) return null;
    throw fault;
  }
}

function isAbsence(fault: unknown): boolean {
  const code = fault instanceof Error && 'code' in fault ? fault.code : undefined;
  return code === 'ENOENT' || code === 'ENOTDIR' || code === 'EISDIR';
}
