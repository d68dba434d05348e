import { isRecord } from './settings.ts';

/** A test of what a client has sent, true when it can be used: whoever speaks the protocol may send anything. */
export type Shape = (value: unknown) => boolean;

/** Text. */
export const text: Shape = (value) => typeof value === 'string';

/** True or false. */
export const truth: Shape = (value) => typeof value === 'boolean';

/** A whole number from 0. */
export const count: Shape = (value) => Number.isInteger(value) && Number(value) >= 0;

/** A whole number. */
export const whole: Shape = (value) => Number.isInteger(value);

/** What may be absent. */
export function optional(shape: Shape): Shape {
  return (value) => value === undefined || value === null || shape(value);
}

/** A list of things of one shape. */
export function list(shape: Shape): Shape {
  return (value) => Array.isArray(value) && value.every(shape);
}

/** A record with at least these fields. */
export function record(fields: Readonly<Record<string, Shape>>): Shape {
  const shapes = Object.entries(fields);
  return (value) => isRecord(value) && shapes.every(([name, shape]) => shape(value[name]));
}

// A place outside the text is answered as the nearest one inside.
const position = record({ line: whole, character: whole });
const range = record({ start: position, end: position });

/** A document, by its address. */
export const document = record({ textDocument: record({ uri: text }) });

/** A place in a document. */
export const place = record({ textDocument: record({ uri: text }), position });

/** A range of a document, with the diagnostics that a client believes are there. */
export const marked = record({
  textDocument: record({ uri: text }),
  range,
  context: record({
    diagnostics: list(record({ range })),
    only: optional(list(text)),
  }),
});

/** A document that is opened. */
export const opened = record({
  textDocument: record({ uri: text, languageId: text, version: whole, text }),
});

/** An edit of a document: ranges with their new text, or the whole text. */
export const edited = record({
  textDocument: record({ uri: text, version: whole }),
  contentChanges: list(record({ range: optional(range), text })),
});

/** Files that have changed. */
export const changedFiles = record({ changes: list(record({ uri: text })) });

/** Anything at all. */
export const anything: Shape = () => true;
