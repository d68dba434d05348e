import type { Part } from '../phonics/reading.ts';

/** The version of the JSON formats; it goes up when a key changes its meaning or goes away. */
const formatVersion = 1;

/** A report of the form `{"version":1,…,"NAME":[…],…}` with every item on a line of its own; `head` comes before the list, `tail` after it. */
export function jsonLines(
  name: string,
  items: readonly object[],
  head: Readonly<Record<string, unknown>> = {},
  tail: Readonly<Record<string, unknown>> = {},
): string {
  const lines = items.map((item) => JSON.stringify(item)).join(',\n');
  const list = items.length === 0 ? '[]' : `[\n${lines}\n]`;
  const entries = written({ version: formatVersion, ...head }).join(',');
  const rest = written(tail).map((entry) => `,\n${entry}`);
  return `{${entries},${JSON.stringify(name)}:${list}${rest.join('')}}\n`;
}

function written(record: Readonly<Record<string, unknown>>): readonly string[] {
  return Object.entries(record).map(([key, value]) => `${JSON.stringify(key)}:${JSON.stringify(value)}`);
}

/** A part of a word as the reports show it. */
export function jsonPart({ letters, sounds, spans }: Part): object {
  return { letters, sounds, spans };
}
