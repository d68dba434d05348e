import type { Phonics } from '../phonics/phonics.ts';
import type { Taught } from '../sequence/taught.ts';
import type { FrontMatter } from '../story/story.ts';
import { foldedWord } from '../text/folded-word.ts';
import { type Declarations, declarationsOf } from './declarations.ts';

/** All that a word's review rests on beside the text. */
export interface ReviewContext {
  readonly taught: Taught;
  readonly phonics: Phonics;
  readonly declared: Declarations;
  /** The sequence's own pronunciations: graphemes by folded word. */
  readonly sequenceGraphemes: ReadonlyMap<string, string>;
}

/** The context of a text at a lesson; without front matter nothing is declared. `phonics` is the one that made `taught`. */
export function reviewContext(
  taught: Taught,
  phonics: Phonics,
  frontMatter = emptyFrontMatter,
): ReviewContext {
  return {
    taught,
    phonics,
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
