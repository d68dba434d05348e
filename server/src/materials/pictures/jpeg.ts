import { viewOf } from '../pdf/font-file.ts';
import { mostDots, type PictureRead, type RasterPicture, upright } from './picture.ts';

/** Reads a JPEG picture; its data go into the document as they are. Throws when the file breaks off. */
export function readJpeg(bytes: Uint8Array): PictureRead {
  const view = viewOf(bytes);
  let orientation = 1;
  let isAdobe = false;
  for (let at = 2; ; ) {
    if (view.getUint8(at) !== 0xff) return { trouble: 'is broken' };
    const marker = view.getUint8(at + 1);
    if (marker === 0xff) {
      at++;
      continue;
    }
    const length = view.getUint16(at + 2);
    const start = at + 4;
    if (marker === 0xe1) orientation = orientationOf(bytes.subarray(start, at + 2 + length)) ?? orientation;
    if (marker === 0xee) isAdobe = String.fromCharCode(...bytes.subarray(start, start + 5)) === 'Adobe';
    if (marker === 0xc0 || marker === 0xc1 || marker === 0xc2) {
      const height = view.getUint16(start + 1);
      const width = view.getUint16(start + 3);
      const channels = view.getUint8(start + 5);
      if (width === 0 || height === 0) return { trouble: 'is broken' };
      if (Math.max(width, height) > mostDots) {
        return { trouble: `is ${width} by ${height} dots large; at most ${mostDots} either way are printed` };
      }
      if (!endsProperly(bytes)) return { trouble: 'breaks off' };
      return pictureOf(bytes, { width, height, channels, orientation, isAdobe });
    }
    if (marker >= 0xc3 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc) {
      return { trouble: 'is of a rare kind of JPEG (lossless or arithmetic); save it as an ordinary one' };
    }
    at += 2 + length;
  }
}

interface Frame {
  readonly width: number;
  readonly height: number;
  readonly channels: number;
  readonly orientation: number;
  readonly isAdobe: boolean;
}

function pictureOf(
  data: Uint8Array,
  { width, height, channels, orientation, isAdobe }: Frame,
): RasterPicture | { trouble: string } {
  const space = new Map([
    [1, '/DeviceGray'],
    [3, '/DeviceRGB'],
    [4, '/DeviceCMYK'],
  ]).get(channels);
  if (space === undefined) return { trouble: 'is broken' };
  // Adobe's programs store the inks of a four-colour picture upside down.
  const decode = channels === 4 && isAdobe ? ' /Decode [1 0 1 0 1 0 1 0]' : '';
  const isTurned = orientation >= 5;
  return {
    kind: 'raster',
    width: isTurned ? height : width,
    height: isTurned ? width : height,
    entries: `/Width ${width} /Height ${height} /ColorSpace ${space} /BitsPerComponent 8${decode} /Filter /DCTDecode`,
    data,
    turn: turns[orientation - 1] ?? upright,
  };
}

/** What the eight orientations of a camera do to the unit square. */
const turns: readonly RasterPicture['turn'][] = [
  upright,
  [-1, 0, 0, 1, 1, 0],
  [-1, 0, 0, -1, 1, 1],
  [1, 0, 0, -1, 0, 1],
  [0, -1, -1, 0, 1, 1],
  [0, -1, 1, 0, 0, 1],
  [0, 1, 1, 0, 0, 0],
  [0, 1, -1, 0, 1, 0],
];

/** The orientation that a camera noted, 1 to 8. */
function orientationOf(segment: Uint8Array): number | undefined {
  if (String.fromCharCode(...segment.subarray(0, 4)) !== 'Exif') return undefined;
  const view = viewOf(segment.subarray(6));
  const isLittle = segment[6] === 0x49;
  const directory = view.byteLength < 8 ? 0 : view.getUint32(4, isLittle);
  if (directory + 2 > view.byteLength) return undefined;
  for (let index = 0; index < view.getUint16(directory, isLittle); index++) {
    const entry = directory + 2 + 12 * index;
    if (entry + 12 > view.byteLength) return undefined;
    if (view.getUint16(entry, isLittle) === 0x0112) {
      const value = view.getUint16(entry + 8, isLittle);
      return value >= 1 && value <= 8 ? value : undefined;
    }
  }
  return undefined;
}

/** True when the end mark is there; some programs write a few bytes behind it. */
function endsProperly(bytes: Uint8Array): boolean {
  for (let at = bytes.length - 2; at > 2; at--) {
    if (bytes[at] === 0xff && bytes[at + 1] === 0xd9) return true;
  }
  return false;
}
