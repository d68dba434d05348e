import { layOut } from './lay-out.ts';
import { readFaces } from './layout/faces.ts';
import type { Printed, PrintOrder } from './order.ts';
import { writeDocument } from './pdf/write-document.ts';
import { readPicture } from './pictures/read-picture.ts';

/**
 * Prints an order of at least one story as a PDF. Pure: the same order gives the same bytes, on any machine and day.
 * Problems (a picture that cannot be used, letters the face lacks) never stop it: an empty frame or box stands in.
 */
export function print(order: PrintOrder): Printed {
  const { document, problems } = layOut(order, { faces: readFaces(order.fonts), read: readPicture });
  return { bytes: writeDocument(document), sides: document.sides.length, problems };
}
