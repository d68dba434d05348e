import type { Gauge, ProtocolRange } from '../../server/src/editor/protocol.ts';
import type { Counts } from '../../server/src/review/review.ts';

/** Running words by kind, in the gauge's order; the kinds left out have none. */
export function countsOfKinds(
  decodable: number,
  highFrequency = 0,
  name = 0,
  storyWord = 0,
  notTaught = 0,
): Counts {
  return {
    words: decodable + highFrequency + name + storyWord + notTaught,
    decodable,
    'high-frequency': highFrequency,
    name,
    'story-word': storyWord,
    'not-taught': notTaught,
  };
}

/** A word-long range on a line of its own for each line named. */
export function rangesOn(...lines: readonly number[]): readonly ProtocolRange[] {
  return lines.map((line) => ({ start: { line, character: 0 }, end: { line, character: 3 } }));
}

/** The gauge of a story of `counts`, with everything else as it should be; `changes` says what is otherwise. */
export function gaugeOfCounts(counts: Counts, changes: Partial<Gauge> = {}): Gauge {
  const readable = counts.words === 0 ? 1 : (counts.decodable + counts['high-frequency']) / counts.words;
  return {
    uri: 'memory:/pond.md',
    version: 1,
    title: 'The Pond',
    lesson: { name: '12', title: 'long i', sequenceUri: 'memory:/sequence.yaml' },
    counts,
    readable,
    decodable: counts.words === 0 ? 1 : counts.decodable / counts.words,
    target: 0.95,
    passes: readable >= 0.95,
    notTaught: [],
    newSpellings: [],
    practice: { words: 0, atLeast: 8 },
    newHighFrequencyWords: [],
    sentences: { atMost: 7, each: [] },
    pages: { atMost: 20, each: [] },
    findings: 0,
    ...changes,
  };
}
