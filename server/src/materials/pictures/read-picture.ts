import { readJpeg } from './jpeg.ts';
import type { PictureRead } from './picture.ts';
import { readPng } from './png.ts';
import { readSvg } from './svg.ts';

/** Reads a PNG, JPEG or SVG picture, told apart by their first bytes. Never throws. */
export function readPicture(bytes: Uint8Array): PictureRead {
  if (bytes.length === 0) return { trouble: 'is empty' };
  const read = readerFor(bytes);
  if (read === undefined) return { trouble: 'is neither a PNG, nor a JPEG, nor an SVG picture' };
  try {
    return read(bytes);
  } catch {
    // Readers report what they know to be wrong; whatever else stops them is a file that breaks off or is garbled.
    return { trouble: 'is broken' };
  }
}

function readerFor(bytes: Uint8Array): ((bytes: Uint8Array) => PictureRead) | undefined {
  if (bytes[0] === 0x89 && bytes[1] === 0x50 && bytes[2] === 0x4e && bytes[3] === 0x47) return readPng;
  if (bytes[0] === 0xff && bytes[1] === 0xd8) return readJpeg;
  const head = String.fromCharCode(...bytes.subarray(0, 2000));
  return /<svg[\s>]/.test(head) || /^(?:\u00ef\u00bb\u00bf)?\s*</.test(head) ? readSvg : undefined;
}
