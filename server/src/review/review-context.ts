import type { Phonics } from '../phonics/phonics.ts';
import type { Taught } from '../sequence/taught.ts';
import type { FrontMatter } from '../story/story.ts';
import { foldedWord } from '../text/folded-word.ts';
import { type Declarations, declarationsOf } from './declarations.ts';
import type { WordVerdict } from './review.ts';
import { type KnownWords, noKnownWords, type WordMemory } from './word-memory.ts';

/** All that a word's review rests on beside the text. */
export interface ReviewContext {
  readonly taught: Taught;
  readonly phonics: Phonics;
  readonly declared: Declarations;
  /** The sequence's own pronunciations: graphemes by folded word. */
  readonly sequenceGraphemes: ReadonlyMap<string, string>;
  /** Words judged at this lesson that the front matter does not decide. */
  readonly known: KnownWords;
  /** Words judged that the front matter does say something of; by the word as written. */
  readonly declaredVerdicts: Map<string, WordVerdict>;
}

/**
 * The context of a text at a lesson; without front matter nothing is declared. `phonics` is the one that made `taught`, and
 * every other that `memory` has seen; without a memory nothing is known of any word.
 */
export function reviewContext(
  taught: Taught,
  phonics: Phonics,
  frontMatter = emptyFrontMatter,
  memory?: WordMemory,
): ReviewContext {
  return {
    taught,
    phonics,
    known: memory?.at(taught) ?? noKnownWords(),
    declaredVerdicts: new Map(),
    declared: declarationsOf(frontMatter),
    sequenceGraphemes: new Map(
      taught.sequence.pronunciations.map(({ word, graphemes }) => [foldedWord(word.value), graphemes.value]),
    ),
  };
}

const emptyFrontMatter: FrontMatter = {
  span: { start: 0, end: 0 },
  names: [],
  storyWords: [],
  pronunciations: [],
  problems: [],
};
