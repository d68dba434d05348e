import { dirname, isAbsolute, resolve } from 'node:path';
import type { PictureFile } from '../materials/order.ts';
import type { Story } from '../story/story.ts';
import { fileTrouble } from './file-trouble.ts';
import { type FoundText, isInside } from './find-texts.ts';
import { type Host, largestPicture } from './host.ts';

/**
 * Reads the pictures that a story shows, by their addresses. A picture must lie inside the outermost folder of the call,
 * also when all links are followed. Each file is read once for all stories that `known` is shared by. With `framesMissing` one
 * that is not there is still to come.
 */
export function storyPictures(
  story: Story,
  found: FoundText,
  { known, framesMissing }: { readonly known: Map<string, PictureFile>; readonly framesMissing: boolean },
  host: Host,
): ReadonlyMap<string, PictureFile> {
  const pictures = new Map<string, PictureFile>();
  for (const { page } of story.pages) {
    for (const { address } of page.illustrations) {
      if (address === '' || pictures.has(address)) continue;
      const path = pathOf(address, found, host);
      if (typeof path !== 'string') {
        pictures.set(address, path);
        continue;
      }
      const file = known.get(path) ?? readPictureFile(path, framesMissing, host);
      known.set(path, file);
      pictures.set(address, file);
    }
  }
  return pictures;
}

function pathOf(
  address: string,
  { absolute, root }: FoundText,
  host: Host,
): string | { readonly trouble: string } {
  if (/^(?:[a-z][a-z0-9+.-]*:|\/\/)/i.test(address)) {
    return { trouble: 'is not a file beside the story; only such files are printed' };
  }
  const plain = decoded(address.replace(/[?#].*$/, ''));
  if (plain === undefined) return { trouble: 'has an address that cannot be read' };
  if (isAbsolute(plain))
    return { trouble: 'is not a relative path; give the way from the story’s folder to it' };
  const path = resolve(dirname(absolute), plain);
  const real = host.realPath(path);
  const leadsOut =
    !isInside(path, root) || (real !== undefined && !isInside(real, host.realPath(root) ?? root));
  return leadsOut ? { trouble: 'leads out of the folder that the stories are in, and is not read' } : path;
}

function readPictureFile(path: string, framesMissing: boolean, host: Host): PictureFile {
  const read = host.readBytes(path);
  if (framesMissing && read.kind === 'missing') return { isToCome: true };
  return read.kind === 'bytes' ? { bytes: read.bytes } : { trouble: fileTrouble(read, largestPicture) };
}

function decoded(address: string): string | undefined {
  try {
    return decodeURIComponent(address);
  } catch {
    return undefined;
  }
}
