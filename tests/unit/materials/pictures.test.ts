import { inflateSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import type { Picture, RasterPicture } from '../../../server/src/materials/pictures/picture.ts';
import { readPicture } from '../../../server/src/materials/pictures/read-picture.ts';
import { type PngWish, smallPng } from '../../support/small-png.ts';

function raster(bytes: Uint8Array): RasterPicture {
  const read = readPicture(bytes);
  if ('trouble' in read || read.kind !== 'raster') throw new Error(JSON.stringify(read));
  return read;
}

const slope = (x: number, y: number, channel: number): number => (x * 9 + y * 21 + channel * 50) & 255;
const size = { width: 11, height: 7 };
const places = Array.from({ length: 77 }, (_, dot) => ({ x: dot % 11, y: Math.floor(dot / 11) }));

describe('PNG', () => {
  test.each([0, 1, 2, 3, 4])(
    'with filter %i keeps its dots when its transparency is taken apart',
    (filter) => {
      const picture = raster(smallPng({ ...size, colour: 6, filter, sample: slope }));
      expect([...inflateSync(picture.data)]).toEqual(
        places.flatMap(({ x, y }) => [0, 1, 2].map((channel) => slope(x, y, channel))),
      );
      expect([...inflateSync(picture.mask ?? Buffer.alloc(0))]).toEqual(
        places.map(({ x, y }) => slope(x, y, 3)),
      );
    },
  );

  const interlaced: readonly (readonly [string, Partial<PngWish>, number])[] = [
    ['colours', { colour: 2 }, 3],
    ['grey', { colour: 0 }, 1],
  ];
  test.each(interlaced)('interlaced, %s', (_name, wish, channels) => {
    const picture = raster(smallPng({ ...size, sample: slope, ...wish, isInterlaced: true, filter: 4 }));
    const expected = places.flatMap(({ x, y }) =>
      Array.from({ length: channels }, (_, channel) => slope(x, y, channel)),
    );
    expect([...inflateSync(picture.data)]).toEqual(expected);
    expect(picture.mask).toBeUndefined();
  });

  test('of one bit with a palette and a clear colour', () => {
    const sample = (x: number, y: number): number => (x + y) & 1;
    const picture = raster(
      smallPng({ ...size, colour: 3, depth: 1, palette: [255, 0, 0, 0, 0, 255], transparency: [0], sample }),
    );
    expect(picture.entries).toContain('/Indexed /DeviceRGB 1 <ff00000000ff>');
    expect([...inflateSync(picture.data)]).toEqual(places.map(({ x, y }) => sample(x, y)));
    expect([...inflateSync(picture.mask ?? Buffer.alloc(0))]).toEqual(
      places.map(({ x, y }) => sample(x, y) * 255),
    );
  });

  test('of sixteen bits with alpha', () => {
    const picture = raster(
      smallPng({
        ...size,
        colour: 4,
        depth: 16,
        sample: (_x, _y, channel) => (channel === 0 ? 0x8080 : 0xffff),
      }),
    );
    expect(new Set(inflateSync(picture.data))).toEqual(new Set([128]));
    expect(new Set(inflateSync(picture.mask ?? Buffer.alloc(0)))).toEqual(new Set([255]));
  });

  test('without transparency is stored as it is', () => {
    const picture = raster(smallPng({ ...size, sample: slope }));
    expect(picture).toMatchObject({ width: 11, height: 7 });
    expect(picture.entries).toContain('/Predictor 15 /Colors 3');
  });
});

/** The head of a JPEG, as far as it is read, with what a camera notes. */
function jpeg(width: number, height: number, orientation?: number, end = 'ffd9'): Buffer {
  const exif =
    orientation === undefined
      ? ''
      : `ffe1001e457869660000${'4d4d002a00000008'}0001011200030000000100${orientation.toString(16).padStart(2, '0')}0000`;
  const two = (value: number): string => value.toString(16).padStart(4, '0');
  return Buffer.from(`ffd8${exif}ffc0001108${two(height)}${two(width)}03011100021100031100${end}`, 'hex');
}

describe('JPEG', () => {
  test('has the size that its frame says', () => {
    expect(raster(jpeg(40, 30))).toMatchObject({ width: 40, height: 30, turn: [1, 0, 0, 1, 0, 0] });
  });

  test.each([
    [1, 40, [1, 0, 0, 1, 0, 0]],
    [3, 40, [-1, 0, 0, -1, 1, 1]],
    [6, 30, [0, -1, 1, 0, 0, 1]],
    [8, 30, [0, 1, -1, 0, 1, 0]],
  ])('is turned upright when the camera was held otherwise (%i)', (orientation, width, turn) => {
    expect(raster(jpeg(40, 30, orientation))).toMatchObject({ width, turn });
  });

  test('that breaks off is refused', () => {
    expect(readPicture(jpeg(40, 30, undefined, ''))).toEqual({ trouble: 'breaks off' });
    expect(readPicture(jpeg(40, 30).subarray(0, 8))).toEqual({ trouble: 'is broken' });
  });
});

const svg = (content: string, attributes = 'viewBox="0 0 100 50"'): Picture | { readonly trouble: string } =>
  readPicture(Buffer.from(`<svg xmlns="http://www.w3.org/2000/svg" ${attributes}>${content}</svg>`));

describe('SVG', () => {
  test.each([
    [
      '<rect x="1" y="2" width="3" height="4" fill="#f00"/>',
      ['1 0 0 rg', '1 2 m', '4 2 l', '4 6 l', '1 6 l', 'h', 'f'],
    ],
    [
      '<path d="M1 1h2v2z" fill="none" stroke="#00f"/>',
      ['0 0 1 RG 1 w 0 J 0 j', '1 1 m', '3 1 l', '3 3 l', 'h', 'S'],
    ],
    ['<path d="M0 0q3 0 3 3" stroke="black"/>', ['2 0 3 1 3 3 c', 'B']],
    ['<polygon points="0,0 4,0 4,4"/>', ['0 0 m', '4 0 l', '4 4 l', 'h', 'f']],
    [
      '<g transform="translate(5 6) scale(2)"><line x1="0" y1="0" x2="1" y2="1" stroke="red"/></g>',
      ['2 0 0 2 5 6 cm', '1 1 l'],
    ],
    [
      '<g style="fill: teal; opacity: .5"><circle cx="5" cy="5" r="2"/></g>',
      ['0 0.502 0.502 rg', '/A50 gs', 'f'],
    ],
    [
      '<defs><path id="a" d="M0 0h1"/></defs><use href="#a" x="3" stroke="#000"/>',
      ['1 0 0 1 3 0 cm', '1 0 l'],
    ],
    ['<path d="M0 0h9v9h-9zM3 3h3v3h-3z" fill-rule="evenodd"/>', ['f*']],
    ['<rect width="9" height="9" display="none"/>', ['1 0 0 -1 0 50 cm']],
    ['<title>A text for readers</title><desc>more</desc>', ['1 0 0 -1 0 50 cm']],
  ])('%s', (content, operators) => {
    const picture = svg(content);
    if ('trouble' in picture || picture.kind !== 'vector') throw new Error(JSON.stringify(picture));
    expect(picture).toMatchObject({ width: 100, height: 50 });
    const lines = picture.operators.split('\n');
    expect(lines).toEqual(expect.arrayContaining(operators));
  });

  test.each([
    ['<text>hi</text>', 'has the element “text”, which is not printed; turn it into paths'],
    ['<image href="a.png"/>', 'has the element “image”, which is not printed; turn it into paths'],
    ['<style>path{fill:red}</style>', 'has the element “style”, which is not printed; turn it into paths'],
    [
      '<rect width="1" height="1" fill="url(#g)"/>',
      'has the colour “url(#g)”, which is not printed; give it as #rrggbb',
    ],
    ['<g filter="url(#f)"><path d="M0 0"/></g>', 'has a filter, which is not printed'],
    ['<path d="M0 0 X 9"/>', 'has a path that cannot be read: “M0 0 X 9”'],
    ['<g transform="wobble(3)"><path d="M0 0"/></g>', 'has a transform that cannot be read: wobble(3)'],
    ['<use href="#gone"/>', 'uses “gone”, which is not in it'],
    ['<g id="a"><use href="#a"/></g>', 'has groups in groups without end'],
    [`${'<g>'.repeat(100_000)}${'</g>'.repeat(100_000)}`, 'has groups in groups without end'],
    ['<g>', 'is broken'],
  ])('%s is refused by name', (content, trouble) => {
    expect(svg(content)).toEqual({ trouble });
  });

  test('needs a size', () => {
    expect(svg('<path d="M0 0"/>', '')).toEqual({
      trouble: 'says nothing of its size; give its svg element a viewBox, or a width and a height',
    });
    expect(svg('<path d="M0 0h1"/>', 'width="30mm" height="20mm"')).toMatchObject({ width: 30, height: 20 });
  });
});

test.each([
  ['nothing', Buffer.alloc(0), 'is empty'],
  ['a text', Buffer.from('hello'), 'is neither a PNG, nor a JPEG, nor an SVG picture'],
  ['a web page', Buffer.from('<html></html>'), 'is not an SVG drawing'],
])('%s is no picture', (_what, bytes, trouble) => {
  expect(readPicture(bytes)).toEqual({ trouble });
});
