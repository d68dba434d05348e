import type { LanguageClient } from './language-client.ts';
import { timed } from './measures.ts';

/** What edits came to. */
export interface Edits {
  /** Milliseconds from each edit to its diagnostics. */
  readonly times: readonly number[];
  /** How many diagnostics the last one had. */
  readonly diagnostics: number;
}

/** The line of a text that edits are made in: one of the child's text, in the middle. */
export function middleLine(text: string): number {
  const lines = text.split('\n');
  return lines.findIndex((each, index) => index > lines.length / 2 && /^[A-Z]/.test(each));
}

/**
 * Makes edits in a document that is open at version 1: a letter in, a letter out, in the middle of the text and followed by a
 * space, so that the word counts as finished. Waits for the diagnostics of each.
 */
export async function makeEdits(
  client: LanguageClient,
  uri: string,
  text: string,
  count: number,
): Promise<Edits> {
  const line = middleLine(text);
  const times: number[] = [];
  let diagnostics = 0;
  for (let edit = 0; edit < count; edit++) {
    const [length, letters] = edit % 2 === 0 ? [0, 'a '] : [2, ''];
    times.push(
      await timed(async () => {
        diagnostics = await client.change(uri, edit + 2, line, 0, length, letters);
      }),
    );
  }
  return { times, diagnostics };
}
