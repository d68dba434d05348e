import { fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { isVowel, type Phoneme } from '../../src/phonics/phoneme.ts';
import { type Alignment, align, type Token } from './alignment.ts';
import type { DirectionTask, Proposals, Scores } from './direction.ts';
import type { TokenInventory } from './word-context.ts';
import type { ListedWord } from './word-list.ts';

/** What the scores of one direction's n-gram model, classifier and network count. Found on held-out training words. */
const weights = { forward: [0.09, 0.14, 0.09], backward: [0.17, 0.13, 0.19] } as const;

/** A letter says nothing, a phone, or two. */
const shapes = [
  { letters: 1, phones: 0 },
  { letters: 1, phones: 1 },
  { letters: 1, phones: 2 },
];

/** A word's readings by the ensemble, the likeliest first, with what each model makes of it. */
export interface ScoredReading {
  readonly phones: readonly string[];
  readonly score: number;
  /** Natural logarithms: forward n-grams, classifier, network, then the three backward. */
  readonly parts: readonly number[];
}

/**
 * Learns from the training words and reads others. A joint n-gram model of letter-and-sound tokens (order 9, modified
 * Kneser-Ney smoothing), a log-linear classifier and a neural network read each word forwards, the same three backwards; the
 * n-gram models propose readings, and a weighted sum of all six logarithms chooses. Letters not seen in training are silent.
 * Measured with `--split 1`: 24.38 % of 12,000 words wrong, about 0.8 points more or less by chance of the split (95 %).
 * Takes two processors, some minutes for 100,000 words, and about 3 GB.
 */
export async function readByEnsemble(
  training: readonly ListedWord[],
  words: readonly string[],
): Promise<readonly (readonly ScoredReading[])[]> {
  const letters = numbered(training.flatMap(({ word }) => [...word]));
  const phones = numbered(training.flatMap(({ readings }) => readings.flat()));
  const pairs = training.flatMap(({ word, readings }) =>
    readings.map((reading) => ({ letters: letters.numbersOf([...word]), phones: phones.numbersOf(reading) })),
  );
  const { tokens, sequences }: Alignment = align(pairs, shapes, {
    letterCount: letters.names.length,
    phoneCount: phones.names.length,
    rounds: 8,
  });
  const inventory = inventoryOf(tokens, letters.names, phones.names);
  const task = { tokens, sequences, inventory, words: words.map((word) => letters.numbersOf([...word])) };
  const [forward, backward] = [
    startDirection({ ...task, isBackward: false }),
    startDirection({ ...task, isBackward: true }),
  ];
  const merged = mergedProposals(await forward.proposals, await backward.proposals, tokens);
  const [ahead, behind] = await Promise.all([forward.score(merged), backward.score(merged)]);
  return merged.map((list, index) =>
    list
      .map((sequence, place) => {
        const parts = [...(ahead[index]?.[place] ?? []), ...(behind[index]?.[place] ?? [])];
        const phonesSaid = phonesOf(sequence, tokens).map((phone) => phones.names[phone] as string);
        return { phones: phonesSaid, score: weighted(parts), parts };
      })
      .sort((a, b) => b.score - a.score),
  );
}

function weighted(parts: readonly number[]): number {
  return [...weights.forward, ...weights.backward].reduce(
    (sum, weight, index) => sum + weight * (parts[index] ?? 0),
    0,
  );
}

function startDirection(task: DirectionTask): {
  readonly proposals: Promise<Proposals>;
  readonly score: (lists: Proposals) => Promise<Scores>;
} {
  // Processes, not threads: threads do not inherit the loader of TypeScript that this runs under.
  const process = fork(fileURLToPath(new URL('./direction.ts', import.meta.url)), {
    serialization: 'advanced',
  });
  const answer = <Message>(): Promise<Message> =>
    new Promise((resolve, reject) => {
      process.once('message', (message) => resolve(message as Message));
      process.once('exit', (code) =>
        reject(new Error(`A process of the ensemble ended early, with ${code}.`)),
      );
    });
  const proposals = answer<Proposals>();
  process.send(task);
  return {
    proposals,
    score(lists) {
      const scores = answer<Scores>();
      process.send(lists);
      return scores;
    },
  };
}

/** Both directions' proposals for each word; of two that say the same, the forward one. */
function mergedProposals(forward: Proposals, backward: Proposals, tokens: readonly Token[]): Proposals {
  return forward.map((list, index) => {
    const found = new Map<string, Int32Array>();
    for (const sequence of [...list, ...(backward[index] ?? [])]) {
      const key = phonesOf(sequence, tokens).join(' ');
      if (!found.has(key)) found.set(key, sequence);
    }
    return [...found.values()];
  });
}

function phonesOf(sequence: Int32Array, tokens: readonly Token[]): number[] {
  return Array.from(sequence, (token) => tokens[token]?.phones ?? []).flat();
}

function inventoryOf(
  tokens: readonly Token[],
  letters: readonly string[],
  phones: readonly string[],
): TokenInventory {
  const vowels = phones.filter((phone) => isVowel(phone as Phoneme));
  const vowelOf = (token: Token) => {
    const vowel = token.phones.find((phone) => isVowel(phones[phone] as Phoneme));
    return vowel === undefined ? 0 : vowels.indexOf(phones[vowel] as string) + 1;
  };
  return {
    letterCount: letters.length,
    letterOf: Int32Array.from(tokens, (token) => token.letters[0] ?? 0),
    vowelOf: Int32Array.from(tokens, vowelOf),
    isReduced: Uint8Array.from(['', ...vowels], (vowel) => (['AH', 'IH', 'ER'].includes(vowel) ? 1 : 0)),
    isVowelLetter: Uint8Array.from(letters, (letter) => ('aeiouy'.includes(letter) ? 1 : 0)),
  };
}

interface Numbering {
  readonly names: readonly string[];
  numbersOf(items: readonly string[]): number[];
}

function numbered(items: readonly string[]): Numbering {
  const names = [...new Set(items)].sort();
  const numbers = new Map(names.map((name, number) => [name, number]));
  return {
    names,
    numbersOf: (wanted) =>
      wanted.flatMap((item) => {
        const number = numbers.get(item);
        return number === undefined ? [] : [number];
      }),
  };
}
