import type { Problem } from '../text/problem.ts';
import type { Span } from '../text/span.ts';

/** A word of the child's text. A hyphenated word gives one for each of its parts. */
export interface Word {
  /** The letters as the child sees them (emphasis marks, escapes and references resolved), apostrophes as written. */
  readonly text: string;
  /** Where it stands; in a page relative to the page's start, in a title to the file's. */
  readonly span: Span;
  /** `number` holds digits, or is a Roman numeral that counts chapters; `abbreviation` ends in a stop that belongs to it (`Mr.`); all else is a `word`. */
  readonly form: 'word' | 'number' | 'abbreviation';
  /** True for the first word of a sentence, or of speech inside one, where a capital says nothing. */
  readonly opensSentence: boolean;
}

/** A sentence of the child's text. Never runs over the end of a paragraph. */
export interface Sentence {
  /** From its first word or mark to its last, relative to the page's start. */
  readonly span: Span;
  /** The sentence as the child sees it, white space folded to single spaces. */
  readonly text: string;
  /** The same as the lines that the writer broke it into herself, as in verse; absent where she did not. */
  readonly lines?: readonly string[];
  /** Never empty: marks without a word give no sentence. */
  readonly words: readonly Word[];
}

/** A punctuation mark as a sequence names it (`!`, `"`, `…`); curly quotes are named by their straight form. */
export interface Mark {
  readonly mark: string;
  /** Relative to the page's start. */
  readonly span: Span;
}

/** A picture of a page. */
export interface Illustration {
  /** The note to the illustrator, from the alternative text. */
  readonly note: string;
  /** The picture's address as written; empty when there is none. */
  readonly address: string;
  /** Relative to the page's start. */
  readonly span: Span;
}

/** Something for the teacher: a block quote. */
export interface TeacherNote {
  readonly text: string;
  /** Relative to the page's start. */
  readonly span: Span;
}

/**
 * What stands between two page breaks. It knows neither its number nor its place, so that a page whose text did not
 * change is the same object in the next version of the story.
 */
export interface Page {
  /** The page's source text. */
  readonly source: string;
  readonly sentences: readonly Sentence[];
  readonly marks: readonly Mark[];
  readonly illustrations: readonly Illustration[];
  readonly notes: readonly TeacherNote[];
  /**
   * The story's title, on the page that has it: the first heading with a word in it of the whole story. The words of
   * every other heading are running words and stand among the sentences; the title's marks stand among the marks.
   */
  readonly heading?: Heading;
  /** How many headings with words the page has, the title among them. */
  readonly headings: number;
  /** What could not be read and is skipped, such as quotes nested without end; spans relative to the page's start. */
  readonly problems: readonly Problem[];
}

/** A heading, kept apart from the running words. */
export interface Heading {
  readonly text: string;
  readonly words: readonly Word[];
  /** Relative to the page's start. */
  readonly span: Span;
}

/** A page at its place in a story. */
export interface PlacedPage {
  readonly page: Page;
  /** From 1. */
  readonly number: number;
  /** Where the page's source begins in the file: add it to every span of the page. */
  readonly start: number;
}

/** A value of the front matter with its place in the file. */
export interface FrontMatterValue<T> {
  readonly value: T;
  readonly span: Span;
}

/** A story word: its meaning as the teacher will explain it (may be empty). */
export interface StoryWord {
  readonly word: string;
  readonly meaning: string;
  readonly span: Span;
}

/** What stands between the two lines of hyphens at the head of a story. */
export interface FrontMatter {
  /** The whole block with its fences; empty at 0 when the file has none. */
  readonly span: Span;
  readonly title?: FrontMatterValue<string>;
  readonly lesson?: FrontMatterValue<string>;
  /** Another sequence file, relative to the story. */
  readonly sequence?: FrontMatterValue<string>;
  readonly names: readonly FrontMatterValue<string>[];
  readonly storyWords: readonly StoryWord[];
  readonly pronunciations: readonly {
    readonly word: FrontMatterValue<string>;
    readonly graphemes: FrontMatterValue<string>;
  }[];
  readonly problems: readonly Problem[];
}

/** A draft as read. Immutable; reading never fails, whatever the text. */
export interface Story {
  /** False for a markdown file without a `lesson` in its front matter: such a file is left alone. */
  readonly isStory: boolean;
  readonly text: string;
  readonly frontMatter: FrontMatter;
  /** The first heading, at its place in the file (spans absolute). */
  readonly title?: Heading;
  readonly pages: readonly PlacedPage[];
  /** Where the first page begins: behind the front matter, or behind a byte-order mark. */
  readonly bodyStart: number;
  /** The lines of all pages that define link addresses, which any page may use. */
  readonly definitions: string;
}
