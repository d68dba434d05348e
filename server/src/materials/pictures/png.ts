import { unzlibSync, zlibSync } from 'fflate';
import { viewOf } from '../pdf/font-file.ts';
import { mostDots, type PictureRead, upright } from './picture.ts';

/** Reads a PNG picture of any colour type, depth and interlacing. Throws when the file breaks off. */
export function readPng(bytes: Uint8Array): PictureRead {
  const file = chunksOf(bytes);
  const { width, height, depth, colour } = file;
  if (width === 0 || height === 0 || width > mostDots || height > mostDots) {
    return { trouble: `is ${width} by ${height} dots large; at most ${mostDots} either way are printed` };
  }
  const channels = channelsOf(colour);
  if (channels === undefined) return { trouble: 'is broken' };
  const isIndexed = colour === 3;
  if (isIndexed && file.palette.length === 0) return { trouble: 'is broken' };
  const space = isIndexed
    ? `[/Indexed /DeviceRGB ${file.palette.length / 3 - 1} <${[...file.palette].map(twoDigits).join('')}>]`
    : channels >= 3
      ? '/DeviceRGB'
      : '/DeviceGray';
  const shape = `/Width ${width} /Height ${height} /ColorSpace ${space}`;
  const raw = unzlibSync(file.data);
  const hasAlpha = colour >= 4 || file.transparency.length > 0;
  if (!hasAlpha && !file.isInterlaced) {
    if (raw.length < height * (1 + Math.ceil((width * channels * depth) / 8)))
      return { trouble: 'breaks off' };
    const entries = `${shape} /BitsPerComponent ${depth} /Filter /FlateDecode /DecodeParms << /Predictor 15 /Colors ${channels} /BitsPerComponent ${depth} /Columns ${width} >>`;
    return { kind: 'raster', width, height, entries, data: file.data, turn: upright };
  }
  const samples = samplesOf(file, channels, raw);
  if (samples === undefined) return { trouble: 'breaks off' };
  const { colours, alphas } = separated(file, channels, samples);
  const mask = hasAlpha ? { mask: zlibSync(alphas) } : {};
  const entries = `${shape} /BitsPerComponent 8 /Filter /FlateDecode`;
  return { kind: 'raster', width, height, entries, data: zlibSync(colours), ...mask, turn: upright };
}

interface PngFile {
  readonly width: number;
  readonly height: number;
  readonly depth: number;
  readonly colour: number;
  readonly isInterlaced: boolean;
  readonly palette: Uint8Array;
  readonly transparency: Uint8Array;
  /** The compressed rows. */
  readonly data: Uint8Array;
}

function chunksOf(bytes: Uint8Array): PngFile {
  const view = viewOf(bytes);
  let palette: Uint8Array = new Uint8Array();
  let transparency: Uint8Array = new Uint8Array();
  const pieces: Uint8Array[] = [];
  for (let at = 8; at + 8 <= bytes.length; ) {
    const length = view.getUint32(at);
    const tag = String.fromCharCode(...bytes.subarray(at + 4, at + 8));
    const content = bytes.subarray(at + 8, at + 8 + length);
    if (tag === 'PLTE') palette = content;
    if (tag === 'tRNS') transparency = content;
    if (tag === 'IDAT') pieces.push(content);
    if (tag === 'IEND') break;
    at += 12 + length;
  }
  return {
    width: view.getUint32(16),
    height: view.getUint32(20),
    depth: view.getUint8(24),
    colour: view.getUint8(25),
    isInterlaced: view.getUint8(28) === 1,
    palette,
    transparency,
    data: joined(pieces),
  };
}

/** One piece is taken as it stands: a book of many pictures is not held in memory twice. */
function joined(pieces: readonly Uint8Array[]): Uint8Array {
  const [first = new Uint8Array(), ...rest] = pieces;
  if (rest.length === 0) return first;
  const whole = new Uint8Array(pieces.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}

function channelsOf(colour: number): number | undefined {
  return new Map([
    [0, 1],
    [2, 3],
    [3, 1],
    [4, 2],
    [6, 4],
  ]).get(colour);
}

/** Where the seven passes of an interlaced picture begin, and how far apart their dots are. */
const passes = [
  [0, 0, 8, 8],
  [4, 0, 8, 8],
  [0, 4, 4, 8],
  [2, 0, 4, 4],
  [0, 2, 2, 4],
  [1, 0, 2, 2],
  [0, 1, 1, 2],
] as const;

/** One number a channel and dot, at the file's own depth; undefined when rows are missing. */
function samplesOf(file: PngFile, channels: number, raw: Uint8Array): Uint16Array | undefined {
  const { width, height, depth, isInterlaced } = file;
  const samples = new Uint16Array(width * height * channels);
  let at = 0;
  for (const [left, top, across, down] of isInterlaced ? passes : [[0, 0, 1, 1] as const]) {
    const columns = Math.ceil((width - left) / across);
    const rows = Math.ceil((height - top) / down);
    if (columns <= 0 || rows <= 0) continue;
    const stride = Math.ceil((columns * channels * depth) / 8);
    const step = Math.max(1, (channels * depth) >> 3);
    let previous: Uint8Array = new Uint8Array(stride);
    for (let row = 0; row < rows; row++) {
      if (at + 1 + stride > raw.length) return undefined;
      const line = raw.subarray(at + 1, at + 1 + stride);
      unfilter(line, previous, raw[at] ?? 0, step);
      for (let column = 0; column < columns; column++) {
        const dot = ((top + row * down) * width + left + column * across) * channels;
        for (let channel = 0; channel < channels; channel++) {
          samples[dot + channel] = sampleOf(line, column * channels + channel, depth);
        }
      }
      previous = line;
      at += 1 + stride;
    }
  }
  return samples;
}

function sampleOf(line: Uint8Array, index: number, depth: number): number {
  if (depth === 8) return line[index] ?? 0;
  if (depth === 16) return ((line[2 * index] ?? 0) << 8) | (line[2 * index + 1] ?? 0);
  const bit = index * depth;
  return ((line[bit >> 3] ?? 0) >> (8 - depth - (bit & 7))) & ((1 << depth) - 1);
}

/** Undoes a row's filter in place. */
function unfilter(line: Uint8Array, previous: Uint8Array, filter: number, step: number): void {
  for (let at = 0; at < line.length; at++) {
    const left = at >= step ? (line[at - step] ?? 0) : 0;
    const above = previous[at] ?? 0;
    const corner = at >= step ? (previous[at - step] ?? 0) : 0;
    const guess =
      filter === 1
        ? left
        : filter === 2
          ? above
          : filter === 3
            ? (left + above) >> 1
            : filter === 4
              ? nearestOf(left, above, corner)
              : 0;
    line[at] = (line[at] ?? 0) + guess;
  }
}

function nearestOf(left: number, above: number, corner: number): number {
  const estimate = left + above - corner;
  const toLeft = Math.abs(estimate - left);
  const toAbove = Math.abs(estimate - above);
  const toCorner = Math.abs(estimate - corner);
  return toLeft <= toAbove && toLeft <= toCorner ? left : toAbove <= toCorner ? above : corner;
}

/** Colours and opacity apart, a byte each. */
function separated(file: PngFile, channels: number, samples: Uint16Array) {
  const { width, height, depth, colour, transparency } = file;
  const colourChannels = channels >= 3 ? 3 : 1;
  const dots = width * height;
  const colours = new Uint8Array(dots * colourChannels);
  const alphas = new Uint8Array(dots).fill(255);
  const most = (1 << depth) - 1;
  const byte = (sample: number): number => (colour === 3 ? sample : Math.round((sample * 255) / most));
  const clear = transparency.length >= 2 * colourChannels ? viewOf(transparency) : undefined;
  for (let dot = 0; dot < dots; dot++) {
    let isClear = colour !== 3 && clear !== undefined;
    for (let channel = 0; channel < colourChannels; channel++) {
      const sample = samples[dot * channels + channel] ?? 0;
      colours[dot * colourChannels + channel] = byte(sample);
      if (isClear && clear?.getUint16(2 * channel) !== sample) isClear = false;
    }
    if (colour === 3) alphas[dot] = transparency[samples[dot] ?? 0] ?? 255;
    else if (colour >= 4) alphas[dot] = byte(samples[dot * channels + channels - 1] ?? most);
    else if (isClear) alphas[dot] = 0;
  }
  return { colours, alphas };
}

function twoDigits(value: number): string {
  return value.toString(16).padStart(2, '0');
}
