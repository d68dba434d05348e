import type { Token } from './alignment.ts';
import { LetterClassifier } from './classifier.ts';
import { Decoder } from './decoder.ts';
import { createKernels } from './kernels.ts';
import { NgramModel } from './n-gram.ts';
import { LetterNetwork } from './network.ts';
import { RelativeFinder } from './relatives.ts';
import { mirrored, type Relatives, type TokenInventory, type TokenizedWord } from './word-context.ts';

/** The first message to the process. Tokens, sequences and words run forwards whatever the worker's direction. */
export interface DirectionTask {
  readonly isBackward: boolean;
  readonly tokens: readonly Token[];
  readonly sequences: readonly Int32Array[];
  readonly inventory: TokenInventory;
  /** The letters of each word to be read. */
  readonly words: readonly (readonly number[])[];
}

/** For each word, token sequences: what a worker proposes at first, and what it is sent to score. */
export type Proposals = readonly (readonly Int32Array[])[];

/** For each word and each of its sequences, the logarithms of its probability: n-gram model, classifier, network. */
export type Scores = readonly (readonly (readonly [number, number, number])[])[];

/** How many readings each direction proposes for a word. */
const proposalsEach = 20;

await run((await nextMessage()) as DirectionTask);

/**
 * Trains the models of one reading direction in a process of its own: sends {@link Proposals}, and answers the next message,
 * the {@link Proposals} of both directions, by {@link Scores}.
 */
async function run(task: DirectionTask): Promise<void> {
  const { isBackward, inventory, words } = task;
  const turned = <Item>(items: readonly Item[]): readonly Item[] =>
    isBackward ? [...items].reverse() : items;
  const turnedTokens = (tokens: Int32Array) => (isBackward ? tokens.slice().reverse() : tokens);
  const tokens = task.tokens.map((token) => ({ letters: token.letters, phones: turned(token.phones) }));
  const ngrams = new NgramModel(task.sequences.map(turnedTokens), tokens.length, 9);
  const decoder = new Decoder(ngrams, tokens, { beam: 40, margin: 9 });
  const proposals: Proposals = words.map((letters) =>
    decoder
      .readings(turned(letters), proposalsEach)
      .map((reading) => turnedTokens(Int32Array.from(reading.tokens))),
  );
  const waiting = nextMessage();
  process.send?.(proposals);

  const trained = task.sequences.map((sequence) => ({
    letters: Array.from(sequence, (token) => inventory.letterOf[token] as number),
    tokens: sequence,
  }));
  const finder = new RelativeFinder(trained);
  const oriented = (letters: readonly number[], said: Int32Array, relatives: Relatives): TokenizedWord =>
    isBackward
      ? { letters: turned(letters), tokens: turnedTokens(said), relatives: mirrored(relatives) }
      : { letters, tokens: said, relatives };
  const lessons = trained.map((word) => oriented(word.letters, word.tokens, finder.find(word.letters)));
  const network = new LetterNetwork(lessons, inventory, await createKernels(), {
    firstLayer: 384,
    secondLayer: 128,
    epochs: 8,
    rate: 0.1,
    dropout: 0.25,
  });
  const classifier = new LetterClassifier(lessons, inventory, {
    epochs: 6,
    rate: 0.1,
    dropout: 0.4,
    leastCount: 2,
  });

  const lists = (await waiting) as Proposals;
  const scores: Scores = lists.map((list, index) => {
    const letters = words[index] as readonly number[];
    const relatives = finder.find(letters);
    return list.map((said) => {
      const word = oriented(letters, said, relatives);
      return [scoreOf(ngrams, word.tokens), classifier.logProbability(word), network.logProbability(word)];
    });
  });
  process.send?.(scores, () => process.disconnect());
}

function nextMessage(): Promise<unknown> {
  return new Promise((resolve) => process.once('message', resolve));
}

function scoreOf(model: NgramModel, tokens: Int32Array): number {
  let [context, total] = [model.start, 0];
  for (const token of tokens) {
    total += model.logProbability(context, token);
    context = model.next(context, token);
  }
  return total + model.logProbability(context, model.end);
}
