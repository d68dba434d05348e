/** What writing a file needs of the file system. */
export interface WritableFiles<Place> {
  exists(place: Place): Promise<boolean>;
  write(place: Place, bytes: Uint8Array): PromiseLike<void>;
  remove(place: Place): PromiseLike<void>;
}

/**
 * Writes a file; one that is there is replaced only when `mayReplace` says yes. What a failed write has left of a new file
 * is taken away again; over an old one it stays as the file system leaves it. The failure is passed on.
 *
 * @returns false when nothing was written because the file is there.
 */
export async function writeWhole<Place>(
  files: WritableFiles<Place>,
  place: Place,
  bytes: Uint8Array,
  mayReplace: () => Promise<boolean>,
): Promise<boolean> {
  const isThere = await files.exists(place);
  if (isThere && !(await mayReplace())) return false;
  try {
    await files.write(place, bytes);
  } catch (fault) {
    // The first failure is the one to be told; often there is nothing to take away.
    if (!isThere) await Promise.resolve(files.remove(place)).catch(() => undefined);
    throw fault;
  }
  return true;
}
