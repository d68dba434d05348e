import { inflateSync } from 'node:zlib';
import { smallPng } from './small-png.ts';

/** A picture in shades of grey, a byte a dot. */
export interface GreyPicture {
  readonly width: number;
  readonly height: number;
  readonly dots: Uint8Array;
}

/** Side of the squares that are compared, in dots: about a letter of the child's book at 32 dots an inch. */
const tile = 12;

/** Reads a PGM, as pdftoppm writes pages in grey. */
export function readPgm(bytes: Buffer): GreyPicture {
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.toString('latin1', 0, 40));
  if (head === null) throw new Error('This is no grey picture of one byte a dot.');
  return { width: Number(head[1]), height: Number(head[2]), dots: bytes.subarray(head[0].length) };
}

/** Writes a PNG of 8-bit grey. */
export function greyPng({ width, height, dots }: GreyPicture): Buffer {
  return smallPng({ width, height, colour: 0, filter: 2, sample: (x, y) => dots[y * width + x] ?? 0 });
}

/** Reads a PNG of 8-bit grey. */
export function readGreyPng(bytes: Buffer): GreyPicture {
  const width = bytes.readUInt32BE(16);
  const height = bytes.readUInt32BE(20);
  if (bytes[24] !== 8 || bytes[25] !== 0 || bytes[28] !== 0)
    throw new Error('This is not a plain grey picture.');
  const pieces: Buffer[] = [];
  for (let at = 8; at < bytes.length; at += 12 + bytes.readUInt32BE(at)) {
    if (bytes.toString('latin1', at + 4, at + 8) === 'IDAT')
      pieces.push(bytes.subarray(at + 8, at + 8 + bytes.readUInt32BE(at)));
  }
  const raw = inflateSync(Buffer.concat(pieces));
  const dots = new Uint8Array(width * height);
  for (let y = 0; y < height; y++) {
    const filter = raw[y * (width + 1)] ?? 0;
    for (let x = 0; x < width; x++) {
      const at = y * width + x;
      const left = x > 0 ? (dots[at - 1] ?? 0) : 0;
      const above = y > 0 ? (dots[at - width] ?? 0) : 0;
      const corner = x > 0 && y > 0 ? (dots[at - width - 1] ?? 0) : 0;
      const guess = [0, left, above, (left + above) >> 1, nearest(left, above, corner)][filter] ?? 0;
      dots[at] = (raw[y * (width + 1) + 1 + x] ?? 0) + guess;
    }
  }
  return { width, height, dots };
}

/**
 * How far two pictures are apart where they differ most: the mean difference of the dots of a square, of 255, in the worst
 * square. Infinite when their sizes differ.
 */
export function worstDifference(one: GreyPicture, other: GreyPicture): number {
  if (one.width !== other.width || one.height !== other.height) return Number.POSITIVE_INFINITY;
  let worst = 0;
  for (let top = 0; top < one.height; top += tile) {
    for (let left = 0; left < one.width; left += tile)
      worst = Math.max(worst, tileDifference(one, other, left, top));
  }
  return worst;
}

function tileDifference(one: GreyPicture, other: GreyPicture, left: number, top: number): number {
  let sum = 0;
  for (let y = top; y < Math.min(top + tile, one.height); y++) {
    for (let x = left; x < Math.min(left + tile, one.width); x++) {
      const at = y * one.width + x;
      sum += Math.abs((one.dots[at] ?? 0) - (other.dots[at] ?? 0));
    }
  }
  return sum / tile ** 2;
}

function nearest(left: number, above: number, corner: number): number {
  const estimate = left + above - corner;
  const [a, b, c] = [left, above, corner].map((each) => Math.abs(estimate - each));
  if ((a ?? 0) <= (b ?? 0) && (a ?? 0) <= (c ?? 0)) return left;
  return (b ?? 0) <= (c ?? 0) ? above : corner;
}
