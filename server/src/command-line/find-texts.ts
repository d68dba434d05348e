import { join, resolve } from 'node:path';
import type { Complaint } from './complaint.ts';
import type { Host } from './host.ts';

/** A file to check. */
export interface FoundText {
  /** As given, or the folder as given and the way from there; with forward slashes. */
  readonly path: string;
  readonly absolute: string;
  /** The outermost folder that belongs to the call: the working folder, else the folder that was given. */
  readonly root: string;
  /** True when the call names the file itself, not a folder around it. */
  readonly isNamed: boolean;
}

/** What the operands of a call lead to, in the order of the call, folders in the order of their names. */
export interface FoundTexts {
  readonly texts: readonly FoundText[];
  readonly complaints: readonly Complaint[];
}

/**
 * Finds the files of the paths; a file that two of them lead to is found once. In folders these are the markdown files,
 * and, where plain text is wanted too, those that end in `.txt`; `node_modules` and folders whose name begins with a dot
 * are passed by.
 */
export function findTexts(
  paths: readonly string[],
  { plainText }: { readonly plainText: boolean },
  host: Host,
): FoundTexts {
  const texts = new Map<string, FoundText>();
  const complaints: Complaint[] = [];
  const isText = plainText ? /\.(md|markdown|txt)$/i : /\.(md|markdown)$/i;

  /** Files met, also those that another path has led to already. */
  let met = 0;
  const add = (text: FoundText): void => {
    met++;
    if (!texts.has(text.absolute)) texts.set(text.absolute, text);
  };
  const walk = (path: string, absolute: string, root: string): void => {
    const entries = host.listFolder(absolute);
    if ('reason' in entries) {
      complaints.push({ path, message: `The folder cannot be read: ${entries.reason}.` });
      return;
    }
    for (const { name, kind } of [...entries].sort(byName)) {
      const inside = path === '.' ? name : `${path.replace(/\/$/, '')}/${name}`;
      if (kind === 'file' && isText.test(name)) {
        add({ path: inside, absolute: join(absolute, name), root, isNamed: false });
      }
      if (kind === 'folder' && name !== 'node_modules' && !name.startsWith('.')) {
        walk(inside, join(absolute, name), root);
      }
    }
  };

  for (const given of paths) {
    const path = withForwardSlashes(given);
    const absolute = resolve(host.workingFolder, given);
    const kind = host.kindOf(absolute);
    const folder = kind === 'folder' ? absolute : resolve(absolute, '..');
    const root = isInside(absolute, host.workingFolder) ? host.workingFolder : folder;
    if (kind === 'missing') complaints.push({ path, message: 'There is no such file or folder.' });
    if (kind === 'file') add({ path, absolute, root, isNamed: true });
    if (kind !== 'folder') continue;
    const before = met + complaints.length;
    walk(path, absolute, root);
    if (met + complaints.length === before) {
      complaints.push({ path, message: 'There is no markdown file in this folder.' });
    }
  }
  return { texts: [...texts.values()], complaints };
}

/** True when a path is a folder or lies below it. Both are absolute. */
export function isInside(path: string, folder: string): boolean {
  const stem = withForwardSlashes(folder).replace(/\/$/, '');
  const inner = withForwardSlashes(path);
  return inner === stem || inner.startsWith(`${stem}/`);
}

/** A path as it is shown: on every machine with forward slashes. */
export function withForwardSlashes(path: string): string {
  return process.platform === 'win32' ? path.replaceAll('\\', '/') : path;
}

const collator = new Intl.Collator('en', { numeric: true });

/** Numbers in names by their value, so that `2-…` comes before `10-…`. */
function byName(left: { readonly name: string }, right: { readonly name: string }): number {
  return collator.compare(left.name, right.name) || (left.name < right.name ? -1 : 1);
}
