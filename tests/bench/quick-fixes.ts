import type { LanguageClient } from './language-client.ts';
import { type Spread, spreadOf, timed } from './measures.ts';

/** How long quick fixes take, in milliseconds. */
export interface FixFigures {
  /** The first request of all, which has the words by meaning read. */
  readonly first: number;
  /** All others, one for each marked word, long sentence and missing high-frequency word. */
  readonly each: Spread;
  /** How many fixes were offered in all. */
  readonly offered: number;
}

/** Most marks that are asked about. */
const most = 300;

/** Asks for the quick fixes of every word and sentence that is marked in a document, as an editor does at each caret. */
export async function measureFixes(client: LanguageClient, uri: string): Promise<FixFigures> {
  const marked = client.latest.filter(({ code }) =>
    /^(untaught-(spelling|form)|long-sentence|missing-high-frequency-word)$/.test(code ?? ''),
  );
  const times: number[] = [];
  let offered = 0;
  for (const diagnostic of marked.slice(0, most)) {
    times.push(
      await timed(async () => {
        offered += await client.fixes(uri, diagnostic);
      }),
    );
  }
  return { first: times[0] ?? Number.NaN, each: spreadOf(times.slice(1)), offered };
}

/** The figures as rows of the report. */
export function fixRows(words: number, { first, each, offered }: FixFigures): readonly string[] {
  const lead = `${String(words).padStart(6)} words  quick fixes of a mark`;
  const figures = [each.median, each.p95, each.most].map((value) => value.toFixed(1)).join(', ');
  return [
    `${lead}, first request  ${first.toFixed(1)} ms, reading the words by meaning included`,
    `${lead}, the others     median, p95, longest ${figures} ms; ${offered} fixes offered`,
  ];
}
