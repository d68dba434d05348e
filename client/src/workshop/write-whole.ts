/** What writing a file needs of the file system. */
export interface WritableFiles<Place> {
  exists(place: Place): Promise<boolean>;
  write(place: Place, bytes: Uint8Array): PromiseLike<void>;
  /** Gives a file another place; one that is there is replaced only when it is said. */
  move(from: Place, to: Place, replaces: boolean): PromiseLike<void>;
  remove(place: Place): PromiseLike<void>;
  /** The place beside a file where its new bytes stand until they are whole. */
  beside(place: Place): Place;
}

/**
 * Writes a file whole or not at all; one that is there is replaced only when `mayReplace` says yes. The bytes are written
 * beside the place first: whatever fails, an old file is as it was and no part of a new one is left. The failure is passed on.
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
  const unfinished = files.beside(place);
  try {
    await files.write(unfinished, bytes);
    await files.move(unfinished, place, isThere);
  } catch (fault) {
    // The first failure is the one to be told; often there is nothing to take away.
    await Promise.resolve(files.remove(unfinished)).catch(() => undefined);
    throw fault;
  }
  return true;
}
