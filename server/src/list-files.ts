import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

/**
 * Lists the markdown and YAML files below a folder, for the server on Node; at most so many, nearer ones first. Folders
 * whose name begins with a dot, node_modules and links are passed by, and so is a folder that cannot be read.
 */
export async function listFiles(folder: string, most: number): Promise<readonly string[]> {
  const found: string[] = [];
  const waiting = [fileURLToPath(folder)];
  for (let next = waiting.shift(); next !== undefined && found.length < most; next = waiting.shift()) {
    const entries = await readdir(next, { withFileTypes: true }).catch(() => []);
    for (const entry of entries) {
      const path = join(next, entry.name);
      if (entry.isDirectory() && !entry.name.startsWith('.') && entry.name !== 'node_modules')
        waiting.push(path);
      if (entry.isFile() && /\.(md|markdown|ya?ml)$/i.test(entry.name)) found.push(pathToFileURL(path).href);
    }
  }
  return found.slice(0, most);
}
