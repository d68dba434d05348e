import type { Reading } from '../phonics/reading.ts';
import type { Counts, RuleId, WordKind } from '../review/review.ts';
import type { Lesson, Sequence } from '../sequence/sequence.ts';
import type { TaughtSpelling } from '../sequence/taught.ts';
import type { Span } from '../text/span.ts';

/** What one story gives to the series it belongs to. Plain and small: it holds neither the text nor the review. */
export interface StoryCoverage {
  /** Path or address, as the host names the story. */
  readonly path: string;
  readonly title: string;
  readonly lesson: Lesson;
  readonly counts: Counts;
  /** Shares from 0 to 1. */
  readonly readable: number;
  readonly decodable: number;
  readonly target: number;
  readonly passes: boolean;
  /** The rules whose findings keep it from passing, each once, with how often; in the order of the text. */
  readonly failing: readonly FailingRule[];
  readonly pages: number;
  readonly sentences: SentenceFigures;
  readonly readability: Readability;
  /** The different words of the running text, in the order in which they come up. */
  readonly words: readonly WordInStory[];
  /** Decodable running words that use each taught spelling; a spelling that is not used is not in it. */
  readonly spellings: ReadonlyMap<TaughtSpelling, number>;
  /** Running uses of each high-frequency word taught by the story's lesson, by its place in `highFrequencyWordsOf`. */
  readonly highFrequencyWords: ReadonlyMap<string, number>;
}

/** A rule that keeps a story from passing. */
export interface FailingRule {
  readonly rule: RuleId;
  readonly count: number;
  /** The message of its first finding. */
  readonly message: string;
  /** Where that finding stands in the file. */
  readonly span: Span;
}

/** The lengths of a story's sentences, in running words; all 0 for a story without words. */
export interface SentenceFigures {
  readonly count: number;
  readonly mean: number;
  readonly longest: number;
}

/**
 * Grades by two formulas, absent for a story without words. Neither was made for texts as short and as simple as these:
 * use them to compare stories of one series, not to name a grade.
 */
export interface Readability {
  readonly fleschKincaid?: number;
  readonly spache?: number;
}

/** A different word of a story. */
export interface WordInStory {
  /** Folded: in lower case, with a straight apostrophe. */
  readonly word: string;
  /** As it is first written. */
  readonly text: string;
  readonly count: number;
  /** Its kind where it first stands. */
  readonly kind: WordKind;
  /** True for a name that the story declares, also one that can be sounded out. */
  readonly isName: boolean;
  /** The reading that kind rests on; none for digits and abbreviations. */
  readonly reading?: Reading;
  /** Where it first stands in the file. */
  readonly span: Span;
}

/** A high-frequency word of a sequence. */
export interface HighFrequencyWord {
  /** As the sequence writes it. */
  readonly word: string;
  /** By which `StoryCoverage.highFrequencyWords` counts it. */
  readonly key: string;
  readonly lesson: Lesson;
}

/** A story at its place in the series. */
export interface StoryInSeries {
  readonly story: StoryCoverage;
  /** Words that no story before it has, in the order in which they come up. */
  readonly newWords: readonly WordInStory[];
  /** Different words up to here. */
  readonly wordsSoFar: number;
}

/** A different word of the whole series. */
export interface WordInSeries {
  /** Folded. */
  readonly word: string;
  /** As it is first written, with its kind and reading in the story that has it first. */
  readonly first: WordInStory;
  readonly firstStory: StoryCoverage;
  /** Running uses in all stories. */
  readonly count: number;
  /** How many stories have it. */
  readonly stories: number;
}

/** Uses of one taught thing, story by story. */
export interface Row<Thing> {
  readonly thing: Thing;
  /** In the order of the stories of the series; 0 also in stories before its lesson. */
  readonly uses: readonly number[];
  readonly total: number;
  /** In how many stories it is used. */
  readonly stories: number;
}

/** All stories along one sequence, in the order of its lessons. */
export interface Series {
  readonly sequence: Sequence;
  readonly stories: readonly StoryInSeries[];
  readonly spellings: readonly Row<TaughtSpelling>[];
  readonly highFrequencyWords: readonly Row<HighFrequencyWord>[];
  /** In the order in which they come up. */
  readonly words: readonly WordInSeries[];
  readonly gaps: readonly Gap[];
}

/** Something that the year lacks. Numbers of stories are those of the sequence's limits or of what was found. */
export type Gap =
  | { readonly kind: 'lesson-without-story'; readonly lesson: Lesson }
  /** No story of its lesson uses the spelling; `stories` says how many there are. */
  | { readonly kind: 'not-practised'; readonly spelling: TaughtSpelling; readonly stories: number }
  /** No story at all uses the spelling. */
  | { readonly kind: 'never-used'; readonly spelling: TaughtSpelling }
  /** None of the next stories after the last one of its lesson uses the spelling. */
  | {
      readonly kind: 'not-again';
      readonly spelling: TaughtSpelling;
      readonly after: StoryCoverage;
      readonly stories: number;
    }
  /** No story from its lesson on has the word. */
  | { readonly kind: 'never-met'; readonly word: HighFrequencyWord }
  /** So many stories in a row, from its lesson on, do not have the word; the longest such stretch. */
  | {
      readonly kind: 'unseen';
      readonly word: HighFrequencyWord;
      readonly stories: number;
      readonly from: StoryCoverage;
      readonly to: StoryCoverage;
    }
  /** The whole series has the word fewer times than it should; names are not asked. */
  | { readonly kind: 'seldom-met'; readonly word: WordInSeries }
  | { readonly kind: 'target-missed'; readonly story: StoryCoverage };

/** The kinds of gap, in the order in which they are reported. */
export const gapKinds = [
  'target-missed',
  'lesson-without-story',
  'never-used',
  'not-practised',
  'not-again',
  'never-met',
  'unseen',
  'seldom-met',
] as const satisfies readonly Gap['kind'][];
