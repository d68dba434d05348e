import { layOut } from '../lay-out.ts';
import { readFaces } from '../layout/faces.ts';
import type { FontBytes } from '../layout/font-files.ts';
import type { PrintOrder, PrintProblem } from '../order.ts';
import { bytesOf } from '../pdf/serialize.ts';
import type { PictureRead } from '../pictures/picture.ts';
import { readPicture } from '../pictures/read-picture.ts';
import { showDocument } from './show-document.ts';
import type { PictureSource, ShownDocument } from './shown-document.ts';
import { vectorSvg } from './vector-svg.ts';

/** A document to look at, and what keeps it from being printed. */
export interface Preview {
  readonly document: ShownDocument;
  readonly problems: readonly PrintProblem[];
  /** The picture of an address that the document shows; undefined for another. */
  pictureAt(address: string): PictureSource | undefined;
}

/** Lays out an order to be looked at; the same pages as those that are printed. */
export type Previewer = (order: PrintOrder) => Preview;

/** A previewer that keeps what costs time from one draft to the next: the faces, and pictures whose bytes are the same object. */
export function createPreviewer(fonts: FontBytes): Previewer {
  const faces = readFaces(fonts);
  const known = new WeakMap<Uint8Array, PictureRead>();
  const read = (bytes: Uint8Array): PictureRead => {
    const picture = known.get(bytes) ?? readPicture(bytes);
    known.set(bytes, picture);
    return picture;
  };
  return (order) => {
    const laidOut = layOut(order, { faces, read });
    const files = new Map(order.stories.flatMap(({ pictures }) => [...pictures]));
    return {
      document: showDocument(laidOut),
      problems: laidOut.problems,
      pictureAt: (address) => {
        const file = files.get(address);
        return file !== undefined && 'bytes' in file ? sourceOf(file.bytes, read(file.bytes)) : undefined;
      },
    };
  };
}

function sourceOf(bytes: Uint8Array, picture: PictureRead): PictureSource | undefined {
  if ('trouble' in picture) return undefined;
  if (picture.kind === 'vector') return { type: 'image/svg+xml', bytes: bytesOf(vectorSvg(picture)) };
  return { type: bytes[0] === 0x89 ? 'image/png' : 'image/jpeg', bytes };
}
