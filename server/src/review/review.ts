import type { Reading } from '../phonics/reading.ts';
import type { Missing, Taught, TaughtSpelling } from '../sequence/taught.ts';
import type { PlacedPage, Sentence, Story, Word } from '../story/story.ts';
import type { Span } from '../text/span.ts';

/** The kinds of running words, in the order in which they are tried. */
export const wordKinds = ['decodable', 'high-frequency', 'name', 'story-word', 'not-taught'] as const;
/** What a running word is for the child at the story's lesson. */
export type WordKind = (typeof wordKinds)[number];

/** The rule ids of the design's table; each has a file of its own in `rules/`. */
export const ruleIds = [
  'untaught-spelling',
  'untaught-form',
  'guessed-reading',
  'long-sentence',
  'long-page',
  'missing-high-frequency-word',
  'little-practice',
  'too-many-story-words',
  'unused-story-word',
  'untaught-punctuation',
  'under-target',
  'sequence-problem',
  'front-matter-problem',
] as const;
/** The id of a rule. */
export type RuleId = (typeof ruleIds)[number];

/** Something to show the writer. */
export interface Finding {
  readonly rule: RuleId;
  readonly severity: 'error' | 'warning' | 'information';
  /** In a page's review relative to the page, in a story's review in offsets of the file. */
  readonly span: Span;
  readonly message: string;
}

/** What a word is for the child, and why. */
export interface WordVerdict {
  readonly kind: WordKind;
  /** True when it uses a spelling, or is a high-frequency word, first taught in the story's own lesson. */
  readonly isNew: boolean;
  /** The reading the verdict rests on: one that fits here and is covered, else the likeliest; none for digits and abbreviations. */
  readonly reading?: Reading;
  /** What the likeliest reading lacks; empty unless the kind is `not-taught`. */
  readonly missing: readonly Missing[];
  /** The new spellings of the lesson that the word uses; none unless it is decodable. */
  readonly newSpellings: readonly TaughtSpelling[];
}

/** A word with what the review says of it. */
export interface ReviewedWord extends WordVerdict {
  readonly word: Word;
}

/** What a rule says of a word, wherever it stands. */
export type WordNote = Omit<Finding, 'span'>;

/** A page's review: a function of the page's text, what is taught and the front matter, and nothing else. */
export interface ReviewedPage {
  readonly words: readonly ReviewedWord[];
  readonly counts: Counts;
  /** Findings in the order of the text, spans relative to the page. */
  readonly findings: readonly Finding[];
  /** True when one of the findings alone keeps a story from passing. */
  readonly fails: boolean;
  readonly uses: PageUses;
}

/** What of the lesson's new matter, and of the front matter, a page uses. Spans are relative to the page. */
export interface PageUses {
  /** For each of the lesson's new high-frequency words, in its order, where it stands. */
  readonly newWords: readonly (readonly Span[])[];
  /** For each of the lesson's new spellings, in its order, the decodable words that use it. */
  readonly newSpellings: readonly (readonly Span[])[];
  /** Decodable words that use a new spelling, whichever. */
  readonly practice: number;
  /** The story words met, as declared; also those that turn out to be readable. */
  readonly storyWords: ReadonlySet<string>;
}

/** Running words by kind. */
export type Counts = Readonly<Record<WordKind | 'words', number>>;

/** A page's review at its place. */
export interface PlacedReview {
  readonly placed: PlacedPage;
  readonly reviewed: ReviewedPage;
}

/** The review of one version of a story: all features read this and nothing else. */
export interface Review {
  readonly story: Story;
  readonly taught: Taught;
  readonly pages: readonly PlacedReview[];
  /** The title's words, counted apart; spans absolute. */
  readonly title: readonly ReviewedWord[];
  readonly counts: Counts;
  /** (decodable + high-frequency) / running words, a share from 0 to 1; 1 for a story without words. */
  readonly readable: number;
  /** decodable / running words, a share from 0 to 1. */
  readonly decodable: number;
  /** The readable target as a share. */
  readonly target: number;
  /**
   * True when every target is met and nothing is wrong with the file: no finding of severity error or warning stands but
   * those of single words (`untaught-spelling`, `untaught-form`), which the readable target weighs together.
   */
  readonly passes: boolean;
  /** Decodable running words that use a new spelling, whichever. */
  readonly practice: number;
  /** Running uses of each new high-frequency word of the lesson; spans absolute. Put together when first asked for. */
  readonly newWordUses: readonly { readonly word: string; readonly spans: readonly Span[] }[];
  /** Running words that use each new spelling of the lesson; spans absolute. Put together when first asked for. */
  readonly newSpellingUses: readonly { readonly spelling: TaughtSpelling; readonly spans: readonly Span[] }[];
  /** The findings of the front matter, the title and the story as a whole, in the order of the text, spans absolute. */
  readonly ownFindings: readonly Finding[];
  /** All findings, those of the pages too, in the order of the text, spans absolute. Put together when first asked for. */
  readonly findings: readonly Finding[];
  /** How many findings there are. */
  readonly findingCount: number;
}

/** A sentence at its place in the file. */
export interface PlacedSentence {
  readonly sentence: Sentence;
  readonly span: Span;
}
