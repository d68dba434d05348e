import type { Taught } from '../../sequence/taught.ts';
import type { PlacedPage, Story } from '../../story/story.ts';
import type { Problem } from '../../text/problem.ts';
import type { Span } from '../../text/span.ts';
import type { Declarations } from '../declarations.ts';
import type { Counts, ReviewedWord, RuleId } from '../review.ts';

/**
 * A small sequence and story. What stands between `⟦` and `⟧` in either text is what the rule finds there; the marks are
 * taken out before the texts are read, and a finding of the rule without marks fails the test.
 */
export interface RuleExample {
  readonly sequence: string;
  readonly story: string;
  /** The messages of the findings, in the order of the text; absent where another part of the house words them. */
  readonly messages?: readonly string[];
}

/** What every rule says of itself. */
export interface RuleDescription {
  readonly id: RuleId;
  /** One line: when the rule speaks. */
  readonly description: string;
  /** The rule's page in five parts. */
  readonly documentation: {
    readonly triggers: string;
    readonly bad: RuleExample;
    readonly good: RuleExample;
    /** What in the files changes the rule's mind: a target of the sequence, a key of the front matter. */
    readonly options: string;
    readonly rationale: string;
  };
  /** Further examples, which run as tests with the two of the page. */
  readonly examples: readonly RuleExample[];
}

/** What a rule found; id and severity are added outside. */
export interface Found {
  readonly span: Span;
  readonly message: string;
}

/** A rule that looks at one word, of the running text or the title, and gives a message or nothing. */
export interface WordRule extends RuleDescription {
  readonly looksAt: 'word';
  readonly check: (
    word: ReviewedWord,
    context: { taught: Taught; declared: Declarations },
  ) => string | undefined;
}

/** A rule that looks at one page; its spans are relative to the page. */
export interface PageRule extends RuleDescription {
  readonly looksAt: 'page';
  readonly check: (page: PlacedPage['page'], taught: Taught) => readonly Found[];
}

/** What a rule for whole stories sees. */
export interface StoryFigures {
  readonly story: Story;
  readonly taught: Taught;
  readonly counts: Counts;
  readonly uses: StoryUses;
}

/** How often a story uses the lesson's new matter, and what it uses of the front matter. */
export interface StoryUses {
  /** For each of the lesson's new high-frequency words, in its order, how often it stands in the running text. */
  readonly newWords: readonly number[];
  /** For each of the lesson's new spellings, in its order, how many decodable running words use it. */
  readonly newSpellings: readonly number[];
  /** Decodable running words that use a new spelling, whichever. */
  readonly practice: number;
  /** The story words met, as declared; also those that turn out to be readable. */
  readonly storyWords: ReadonlySet<string>;
}

/** A rule that looks at the whole story; its spans are absolute. */
export interface StoryRule extends RuleDescription {
  readonly looksAt: 'story';
  readonly check: (figures: StoryFigures) => readonly Found[];
}

/** A rule that passes on what the readers of the files found wrong; each problem brings its own severity. */
export interface ProblemRule extends RuleDescription {
  readonly looksAt: 'problems';
  readonly check: (problems: readonly Problem[]) => readonly Found[];
}

/** Any of the four kinds of rule. */
export type Rule = WordRule | PageRule | StoryRule | ProblemRule;
