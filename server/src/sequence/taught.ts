import type { Phoneme, Stress } from '../phonics/phoneme.ts';
import type { Ending, Part, Reading } from '../phonics/reading.ts';
import type { Blend, Lesson, Sequence, SpellingLine, Targets } from './sequence.ts';

/**
 * A spelling as taught: the graphemes and sound classes its letters have in its key word.
 * Usually one grapheme; `all as in ball` has two and licenses only the two together.
 */
export interface TaughtSpelling {
  readonly line: SpellingLine;
  readonly lesson: Lesson;
  readonly pattern: readonly {
    readonly letters: string;
    readonly sounds: readonly Phoneme[];
    readonly soundClass: string;
    /** The stress of the vowel in the key word; absent when there is none. */
    readonly stress?: Stress;
  }[];
}

/** What a word lacks to be decodable. */
export type Missing =
  | {
      readonly kind: 'spelling';
      readonly letters: string;
      readonly sounds: readonly Phoneme[];
      /** The key word of the lesson that will teach it, else the common one, else none. */
      readonly keyWord?: string;
      /** True for the weak vowel of a short word (*the*), which no key word names. */
      readonly isWeak?: boolean;
      /** The lesson that will teach it; absent when none does. */
      readonly lesson?: Lesson;
      /** The part of the reading that needs it. */
      readonly part: Part;
    }
  | { readonly kind: 'ending'; readonly ending: Ending; readonly lesson?: Lesson }
  | { readonly kind: 'blend'; readonly blend: Blend; readonly letters: string; readonly lesson?: Lesson }
  | { readonly kind: 'syllables'; readonly syllables: number; readonly lesson?: Lesson };

/** How a reading stands at a lesson. */
export interface Verdict {
  /** What it lacks; empty when the word can be sounded out. */
  readonly missing: readonly Missing[];
  /** The taught spellings it was covered by, in the order of the base word; then those that its endings practise. */
  readonly uses: readonly TaughtSpelling[];
}

/** All that the children have been taught by the end of one lesson. Immutable and shared. */
export interface Taught {
  readonly sequence: Sequence;
  readonly lesson: Lesson;
  /** The sequence's targets with the lesson's own changes (the latest that set each). */
  readonly targets: Targets;
  /** The spellings first taught in this very lesson. */
  readonly newSpellings: readonly TaughtSpelling[];
  /** The high-frequency words first taught in this very lesson, as written. */
  readonly newHighFrequencyWords: readonly string[];
  /** The lesson that taught a word as a whole, up to this one; any capitals. */
  highFrequencyLesson(word: string): Lesson | undefined;
  /** The later lesson that will teach a word as a whole, if any and if none so far has; any capitals. */
  laterHighFrequencyLesson(word: string): Lesson | undefined;
  /** The lesson, at or before this one, that introduced a punctuation mark; `'open'` when marks are not checked. */
  punctuationLesson(mark: string): Lesson | 'open' | undefined;
  /** The lesson that will introduce a mark later, if any. */
  laterPunctuationLesson(mark: string): Lesson | undefined;
  /** How a reading stands at this lesson. */
  judge(reading: Reading): Verdict;
  /** True for a reading with an ending, a blend or a number of syllables that this very lesson opens. */
  usesNewForm(reading: Reading): boolean;
}
