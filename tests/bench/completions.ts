import type { LanguageClient } from './language-client.ts';
import { type Spread, spreadOf, timed } from './measures.ts';

/** How long completion takes, in milliseconds. */
export interface CompletionFigures {
  /** The first request of all. */
  readonly first: number;
  /** All others: behind the first letter, then behind the second, of words that begin differently. */
  readonly each: Spread;
  /** How many words were offered in all. */
  readonly offered: number;
}

/** Asks for completion in a document's words, each beginning with other letters, as an editor does while one is typed. */
export async function measureCompletions(
  client: LanguageClient,
  uri: string,
  text: string,
): Promise<CompletionFigures> {
  const times: number[] = [];
  let offered = 0;
  for (const [line, character] of placesIn(text)) {
    times.push(
      await timed(async () => {
        offered += await client.completions(uri, line, character);
      }),
    );
  }
  return { first: times[0] ?? Number.NaN, each: spreadOf(times.slice(1)), offered };
}

/** Behind the first and the second letter of the first word that begins so. */
function placesIn(text: string): readonly (readonly [line: number, character: number])[] {
  const lines = text.split('\n');
  const start = lines.indexOf('---', 1) + 1;
  const seen = new Set<string>();
  return lines.slice(start).flatMap((line, index) =>
    [...line.matchAll(/[a-z]{2,}/gi)].flatMap(({ 0: word, index: at }) =>
      [1, 2].flatMap((length) => {
        const prefix = word.slice(0, length).toLowerCase();
        if (seen.has(prefix)) return [];
        seen.add(prefix);
        return [[start + index, at + length] as const];
      }),
    ),
  );
}

/** The figures as rows of the report. */
export function completionRows(
  words: number,
  { first, each, offered }: CompletionFigures,
): readonly string[] {
  const lead = `${String(words).padStart(6)} words  completion`;
  const figures = [each.median, each.p95, each.most].map((value) => value.toFixed(1)).join(', ');
  return [
    `${lead}, first request  ${first.toFixed(1)} ms`,
    `${lead}, the others     median, p95, longest ${figures} ms; ${offered} words offered`,
  ];
}
