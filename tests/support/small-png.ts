import { crc32, deflateSync } from 'node:zlib';

/** What a test picture is made of. */
export interface PngWish {
  readonly width: number;
  readonly height: number;
  /** Bits a channel. */
  readonly depth?: number;
  /** PNG's number for what the channels mean: 0 grey, 2 colours, 3 palette, 4 grey and alpha, 6 colours and alpha. */
  readonly colour?: number;
  readonly palette?: readonly number[];
  readonly transparency?: readonly number[];
  /** The value of a channel at a place. */
  readonly sample: (x: number, y: number, channel: number) => number;
  /** The filter of each row, 0 to 4. */
  readonly filter?: number;
  readonly isInterlaced?: boolean;
}

const channelsOf: Readonly<Record<number, number>> = { 0: 1, 2: 3, 3: 1, 4: 2, 6: 4 };
const passes = [
  [0, 0, 8, 8],
  [4, 0, 8, 8],
  [0, 4, 4, 8],
  [2, 0, 4, 4],
  [0, 2, 2, 4],
  [1, 0, 2, 2],
  [0, 1, 1, 2],
] as const;

/** Writes a PNG, straight from the standard. */
export function smallPng(wish: PngWish): Buffer {
  const { width, height, depth = 8, colour = 2, isInterlaced = false, filter = 0 } = wish;
  const channels = channelsOf[colour] ?? 1;
  const rows: Buffer[] = [];
  for (const [left, top, across, down] of isInterlaced ? passes : ([[0, 0, 1, 1]] as const)) {
    let above: Buffer | undefined;
    for (let y = top; y < height; y += down) {
      const values: number[] = [];
      for (let x = left; x < width; x += across) {
        for (let channel = 0; channel < channels; channel++) values.push(wish.sample(x, y, channel));
      }
      if (values.length === 0) continue;
      const row = packed(values, depth);
      rows.push(
        filtered(row, above ?? Buffer.alloc(row.length), filter, Math.max(1, (channels * depth) >> 3)),
      );
      above = row;
    }
  }
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.set([depth, colour, 0, 0, isInterlaced ? 1 : 0], 8);
  return Buffer.concat([
    Buffer.from('89504e470d0a1a0a', 'hex'),
    chunk('IHDR', head),
    ...(wish.palette === undefined ? [] : [chunk('PLTE', Buffer.from(wish.palette))]),
    ...(wish.transparency === undefined ? [] : [chunk('tRNS', Buffer.from(wish.transparency))]),
    chunk('IDAT', deflateSync(Buffer.concat(rows))),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

function packed(values: readonly number[], depth: number): Buffer {
  if (depth === 16) return Buffer.from(values.flatMap((value) => [value >> 8, value & 255]));
  const row = Buffer.alloc(Math.ceil((values.length * depth) / 8));
  for (const [index, value] of values.entries()) {
    const bit = index * depth;
    row[bit >> 3] = (row[bit >> 3] ?? 0) | (value << (8 - depth - (bit & 7)));
  }
  return row;
}

function filtered(row: Buffer, above: Buffer, filter: number, step: number): Buffer {
  const bytes = [...row].map((value, at) => {
    const left = row[at - step] ?? 0;
    const up = above[at] ?? 0;
    const corner = at >= step ? (above[at - step] ?? 0) : 0;
    const estimate = left + up - corner;
    const [a, b, c] = [left, up, corner].map((each) => Math.abs(estimate - each));
    const nearest = (a ?? 0) <= (b ?? 0) && (a ?? 0) <= (c ?? 0) ? left : (b ?? 0) <= (c ?? 0) ? up : corner;
    return (value - ([0, left, up, (left + up) >> 1, nearest][filter] ?? 0)) & 255;
  });
  return Buffer.from([filter, ...bytes]);
}

function chunk(tag: string, content: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(tag, 'latin1'), content]);
  const head = Buffer.alloc(4);
  head.writeUInt32BE(content.length);
  const sum = Buffer.alloc(4);
  sum.writeUInt32BE(crc32(body) >>> 0);
  return Buffer.concat([head, body, sum]);
}
