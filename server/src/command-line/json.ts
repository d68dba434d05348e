import type { Part } from '../phonics/reading.ts';

/** The version of the JSON formats; it goes up when a key changes its meaning or goes away. */
const formatVersion = 1;

/** A report of the form `{"version":1,…,"NAME":[…]}` with every item on a line of its own; `head` comes before the list. */
export function jsonLines(
  name: string,
  items: readonly object[],
  head: Readonly<Record<string, unknown>> = {},
): string {
  const lines = items.map((item) => JSON.stringify(item)).join(',\n');
  const list = items.length === 0 ? '[]' : `[\n${lines}\n]`;
  const entries = Object.entries({ version: formatVersion, ...head })
    .map(([key, value]) => `${JSON.stringify(key)}:${JSON.stringify(value)}`)
    .join(',');
  return `{${entries},${JSON.stringify(name)}:${list}}\n`;
}

/** A part of a word as the reports show it. */
export function jsonPart({ letters, sounds, spans }: Part): object {
  return { letters, sounds, spans };
}
