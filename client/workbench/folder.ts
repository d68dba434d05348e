import { mkdir, readdir, readFile, realpath, rename, rm, stat, writeFile } from 'node:fs/promises';
import { dirname, join, sep } from 'node:path';

/** A refusal or failure that the file-system extension turns into the matching editor error. */
export class FolderError extends Error {
  /** The HTTP status that carries it: 400, 403, 404 or 409. */
  readonly status: number;

  constructor(status: number, message: string) {
    super(message);
    this.status = status;
  }
}

/** What is known of a file or folder; times in milliseconds since 1970, size in bytes. */
export interface EntryFacts {
  readonly kind: 'file' | 'folder';
  readonly created: number;
  readonly modified: number;
  readonly size: number;
}

/**
 * One folder of the disk and nothing outside it. Paths are relative, with `/` between the names; the empty path is the
 * folder itself. A path or a symbolic link that leads out of the folder is refused with a {@link FolderError}.
 */
export class Folder {
  readonly #root: string;

  private constructor(root: string) {
    this.#root = root;
  }

  /** Opens a folder. @throws Error when there is none at that place. */
  static async open(path: string): Promise<Folder> {
    const root = await realpath(path);
    if (!(await stat(root)).isDirectory()) throw new Error(`${path} is not a folder.`);
    return new Folder(root);
  }

  /** The folder's real place on the disk. */
  get root(): string {
    return this.#root;
  }

  /** Tells what stands at a path. */
  async facts(path: string): Promise<EntryFacts> {
    const facts = await stat(await this.#existing(path));
    return {
      kind: facts.isDirectory() ? 'folder' : 'file',
      created: Math.trunc(facts.ctimeMs),
      modified: Math.trunc(facts.mtimeMs),
      size: facts.size,
    };
  }

  /** The names in a folder with their kinds; links that lead out of the opened folder are left out. */
  async list(path: string): Promise<{ name: string; kind: 'file' | 'folder' }[]> {
    const place = await this.#existing(path);
    const entries: { name: string; kind: 'file' | 'folder' }[] = [];
    for (const entry of await readdir(place, { withFileTypes: true })) {
      if (entry.isDirectory()) entries.push({ name: entry.name, kind: 'folder' });
      else if (entry.isFile()) entries.push({ name: entry.name, kind: 'file' });
      else if (entry.isSymbolicLink()) {
        const facts = await this.facts(path === '' ? entry.name : `${path}/${entry.name}`).catch(
          () => undefined,
        );
        if (facts !== undefined) entries.push({ name: entry.name, kind: facts.kind });
      }
    }
    return entries;
  }

  /** The bytes of a file. */
  async read(path: string): Promise<Buffer> {
    return readFile(await this.#existing(path));
  }

  /** Writes a whole file; `create` and `overwrite` mean what they mean to the editor. */
  async write(path: string, bytes: Uint8Array, how: { create: boolean; overwrite: boolean }): Promise<void> {
    const exists = await this.#exists(path);
    if (!exists && !how.create) throw new FolderError(404, 'There is no such file.');
    if (exists && !how.overwrite) throw new FolderError(409, 'The file is already there.');
    await writeFile(exists ? await this.#existing(path) : await this.#new(path), bytes);
  }

  /** Makes a folder. */
  async makeFolder(path: string): Promise<void> {
    await mkdir(await this.#new(path));
  }

  /** Deletes a file, or a folder with all that is in it; the opened folder itself stays. */
  async delete(path: string): Promise<void> {
    if (path === '') throw new FolderError(403, 'The opened folder itself is not deleted.');
    await this.#existing(path);
    await rm(await this.#new(path), { recursive: true });
  }

  /** Moves a file or folder. */
  async rename(from: string, to: string, how: { overwrite: boolean }): Promise<void> {
    if (from === '' || to === '') throw new FolderError(403, 'The opened folder itself is not moved.');
    await this.#existing(from);
    if (!how.overwrite && (await this.#exists(to))) throw new FolderError(409, 'The file is already there.');
    await rename(await this.#new(from), await this.#new(to));
  }

  async #exists(path: string): Promise<boolean> {
    try {
      await this.#existing(path);
      return true;
    } catch (error) {
      if (error instanceof FolderError && error.status === 404) return false;
      throw error;
    }
  }

  /** The real place of something that is there. */
  async #existing(path: string): Promise<string> {
    return this.#inside(await realpathOrMissing(this.#join(path)));
  }

  /** The place of something that need not be there; its parent must be. A link at that place is not followed. */
  async #new(path: string): Promise<string> {
    const place = this.#join(path);
    const parent = this.#inside(await realpathOrMissing(dirname(place)));
    return join(parent, path.slice(path.lastIndexOf('/') + 1));
  }

  #join(path: string): string {
    const names = path === '' ? [] : path.split('/');
    for (const name of names) {
      // A colon or a backslash would be part of the path syntax on Windows.
      const isOdd = name === '' || name === '.' || name === '..' || /[\\\0]/.test(name);
      if (isOdd || (sep === '\\' && name.includes(':')))
        throw new FolderError(403, 'That path is not allowed.');
    }
    return join(this.#root, ...names);
  }

  #inside(place: string): string {
    const start = this.#root.endsWith(sep) ? this.#root : this.#root + sep;
    if (place !== this.#root && !place.startsWith(start)) {
      throw new FolderError(403, 'That leads out of the opened folder.');
    }
    return place;
  }
}

async function realpathOrMissing(place: string): Promise<string> {
  try {
    return await realpath(place);
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === 'ENOENT' || code === 'ENOTDIR') throw new FolderError(404, 'There is no such file.');
    throw error;
  }
}
