import { linkSync, mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';

/**
 * Writes a file under another name in its own folder and gives it its name when it is whole, so that nobody ever sees a
 * part of it. False when a file of that name is there and must stay. Throws when the disk refuses.
 */
export function writeWhole(path: string, bytes: Uint8Array, overwrites: boolean): boolean {
  mkdirSync(dirname(path), { recursive: true });
  const draft = `${path}.${process.pid}.part`;
  try {
    writeFileSync(draft, bytes, { flag: 'wx' });
    if (overwrites) renameSync(draft, path);
    else placeBeside(draft, path);
    return true;
  } catch (fault) {
    if (isTaken(fault, path)) return false;
    throw fault;
  } finally {
    rmSync(draft, { force: true });
  }
}

/** Unlike a renaming, a link never replaces a file that has appeared in the meantime. */
function placeBeside(draft: string, path: string): void {
  try {
    linkSync(draft, path);
  } catch (fault) {
    if (isTaken(fault, path)) throw fault;
    // Some file systems have no links.
    renameSync(draft, path);
  }
}

function isTaken(fault: unknown, path: string): boolean {
  return (
    fault instanceof Error &&
    'code' in fault &&
    fault.code === 'EEXIST' &&
    'dest' in fault &&
    fault.dest === path
  );
}
