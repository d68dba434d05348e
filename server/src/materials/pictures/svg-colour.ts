/** Red, green and blue from 0 to 1. */
export type Colour = readonly [number, number, number];

/** Reads `#rgb`, `#rrggbb`, `rgb(…)` and the names below; undefined for anything else. */
export function colourOf(written: string): Colour | undefined {
  const value = written.trim().toLowerCase();
  const long = /^#([0-9a-f])([0-9a-f])([0-9a-f])$/.test(value)
    ? value.replace(/[0-9a-f]/g, '$&$&')
    : (names.get(value) ?? value);
  const digits = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/.exec(long);
  if (digits !== null) {
    const [, red = '0', green = '0', blue = '0'] = digits;
    return [red, green, blue].map((pair) => Number.parseInt(pair, 16) / 255) as unknown as Colour;
  }
  const parts = /^rgb\(\s*([\d.]+%?)[\s,]+([\d.]+%?)[\s,]+([\d.]+%?)\s*\)$/.exec(value);
  if (parts === null) return undefined;
  const [red, green, blue] = parts
    .slice(1)
    .map((part) => Math.min(1, Number.parseFloat(part) / (part.endsWith('%') ? 100 : 255)));
  return [red ?? 0, green ?? 0, blue ?? 0];
}

/** The sixteen colours every program names, and a few more that drawings use. */
const names: ReadonlyMap<string, string> = new Map([
  ['black', '#000000'],
  ['silver', '#c0c0c0'],
  ['gray', '#808080'],
  ['grey', '#808080'],
  ['white', '#ffffff'],
  ['maroon', '#800000'],
  ['red', '#ff0000'],
  ['purple', '#800080'],
  ['fuchsia', '#ff00ff'],
  ['magenta', '#ff00ff'],
  ['green', '#008000'],
  ['lime', '#00ff00'],
  ['olive', '#808000'],
  ['yellow', '#ffff00'],
  ['navy', '#000080'],
  ['blue', '#0000ff'],
  ['teal', '#008080'],
  ['aqua', '#00ffff'],
  ['cyan', '#00ffff'],
  ['orange', '#ffa500'],
  ['pink', '#ffc0cb'],
  ['brown', '#a52a2a'],
  ['gold', '#ffd700'],
  ['tan', '#d2b48c'],
  ['beige', '#f5f5dc'],
  ['skyblue', '#87ceeb'],
  ['lightgray', '#d3d3d3'],
  ['lightgrey', '#d3d3d3'],
  ['darkgray', '#a9a9a9'],
  ['darkgrey', '#a9a9a9'],
]);
