import { readAuthor } from '../phonics/author-reading.ts';
import type { Phonics } from '../phonics/phonics.ts';
import type { Taught } from '../sequence/taught.ts';
import type { Page, Story } from '../story/story.ts';
import type { Problem } from '../text/problem.ts';
import { type Span, shifted } from '../text/span.ts';
import { declarationsOf } from './declarations.ts';
import { decodableShare, readableShare, summedCounts } from './figures.ts';
import { frontMatterFindings, inOrder, storyFindings, wordFindings } from './findings.ts';
import type { Finding, PageUses, PlacedReview, Review, ReviewedPage } from './review.ts';
import { type ReviewContext, reviewContext } from './review-context.ts';
import { reviewPage } from './review-page.ts';
import { reviewWords } from './review-word.ts';
import type { StoryUses } from './rules/rule.ts';
import { failsStory } from './severity.ts';
import type { WordMemory } from './word-memory.ts';

/** What a review is a function of. */
export interface ReviewInput {
  readonly story: Story;
  /** What the children have been taught by the story's lesson. */
  readonly taught: Taught;
  /** The one that `taught` was made with. */
  readonly phonics: Phonics;
  /** Spares work, and leaves no trace in the review. */
  readonly memory?: WordMemory;
  /** Problems of the front matter that only the host can see, such as a sequence outside the workspace. */
  readonly frontMatterProblems?: readonly Problem[];
}

/**
 * Reviews a story at its lesson. Pure: the same input gives an equal review, whatever `previous` and `memory` are.
 *
 * `previous` is an earlier review of the same document. As long as `taught` is the same object and the front matter says
 * the same of every word, pages that are the same objects keep their review, and only the changed ones are read anew.
 */
export function reviewStory(input: ReviewInput, previous?: Review): Review {
  const { story, taught } = input;
  const context = reviewContext(taught, input.phonics, story.frontMatter, input.memory);
  const pages = reviewedPages(story, context, previous);
  const title = reviewWords(story.title?.words ?? [], context);
  const counts = summedCounts(pages.map(({ reviewed }) => reviewed.counts));
  const uses = storyUses(pages, taught);
  const ownFindings = inOrder([
    ...frontMatterFindings([...story.frontMatter.problems, ...(input.frontMatterProblems ?? [])]),
    ...frontMatterFindings([...titleProblems(story), ...pronunciationProblems(input)]),
    ...storyFindings({ story, taught, counts, uses }),
    ...wordFindings(title, context),
  ]);
  return new StoryReview({
    story,
    taught,
    pages,
    title,
    counts,
    readable: readableShare(counts),
    decodable: decodableShare(counts),
    target: taught.targets.readable / 100,
    passes: !ownFindings.some(failsStory) && !pages.some(({ reviewed }) => reviewed.fails),
    practice: uses.practice,
    ownFindings,
    findingCount: pages.reduce((sum, { reviewed }) => sum + reviewed.findings.length, ownFindings.length),
  });
}

/** What is known of a story at once. */
type Figures = Omit<Review, 'newWordUses' | 'newSpellingUses' | 'findings'>;

/**
 * A review with what is worked out when it is first asked for. A class, since V8 makes a shape of its own for every object that
 * is written with getters, and keeps the garbage of a thousand such reviews.
 */
class StoryReview implements Review {
  readonly story: Review['story'];
  readonly taught: Review['taught'];
  readonly pages: Review['pages'];
  readonly title: Review['title'];
  readonly counts: Review['counts'];
  readonly readable: number;
  readonly decodable: number;
  readonly target: number;
  readonly passes: boolean;
  readonly practice: number;
  readonly ownFindings: Review['ownFindings'];
  readonly findingCount: number;
  #newWordUses: Review['newWordUses'] | undefined;
  #newSpellingUses: Review['newSpellingUses'] | undefined;
  #findings: Review['findings'] | undefined;

  constructor(figures: Figures) {
    this.story = figures.story;
    this.taught = figures.taught;
    this.pages = figures.pages;
    this.title = figures.title;
    this.counts = figures.counts;
    this.readable = figures.readable;
    this.decodable = figures.decodable;
    this.target = figures.target;
    this.passes = figures.passes;
    this.practice = figures.practice;
    this.ownFindings = figures.ownFindings;
    this.findingCount = figures.findingCount;
  }

  get newWordUses(): Review['newWordUses'] {
    this.#newWordUses ??= this.taught.newHighFrequencyWords.map((word, index) => ({
      word,
      spans: placedSpans(this.pages, ({ newWords }) => newWords[index]),
    }));
    return this.#newWordUses;
  }

  get newSpellingUses(): Review['newSpellingUses'] {
    this.#newSpellingUses ??= this.taught.newSpellings.map((spelling, index) => ({
      spelling,
      spans: placedSpans(this.pages, ({ newSpellings }) => newSpellings[index]),
    }));
    return this.#newSpellingUses;
  }

  get findings(): Review['findings'] {
    this.#findings ??= inOrder([...this.ownFindings, ...placedFindings(this.pages)]);
    return this.#findings;
  }
}

function reviewedPages(story: Story, context: ReviewContext, previous?: Review): readonly PlacedReview[] {
  const isAlike = previous?.taught === context.taught && declaresTheSame(previous.story, story, context);
  const before = isAlike ? previous.pages : [];
  let known: Map<Page, ReviewedPage> | undefined;
  return story.pages.map((placed, index) => {
    const there = before[index];
    if (there?.placed === placed) return there;
    known ??= new Map(before.map(({ placed: { page }, reviewed }) => [page, reviewed]));
    return { placed, reviewed: known.get(placed.page) ?? reviewPage(placed.page, context) };
  });
}

function declaresTheSame(before: Story, now: Story, { declared }: ReviewContext): boolean {
  return before.frontMatter === now.frontMatter || declarationsOf(before.frontMatter).key === declared.key;
}

function storyUses(pages: readonly PlacedReview[], taught: Taught): StoryUses {
  const newWords = taught.newHighFrequencyWords.map(() => 0);
  const newSpellings = taught.newSpellings.map(() => 0);
  const storyWords = new Set<string>();
  let practice = 0;
  for (const { reviewed } of pages) {
    const { uses } = reviewed;
    addLengths(newWords, uses.newWords);
    addLengths(newSpellings, uses.newSpellings);
    for (const word of uses.storyWords) storyWords.add(word);
    practice += uses.practice;
  }
  return { newWords, newSpellings, practice, storyWords };
}

function addLengths(sums: number[], lists: readonly (readonly Span[])[]): void {
  for (let index = 0; index < sums.length; index++) {
    sums[index] = (sums[index] ?? 0) + (lists[index]?.length ?? 0);
  }
}

function placedSpans(
  pages: readonly PlacedReview[],
  spansOf: (uses: PageUses) => readonly Span[] | undefined,
): readonly Span[] {
  return pages.flatMap(({ placed, reviewed }) =>
    (spansOf(reviewed.uses) ?? []).map((span) => shifted(span, placed.start)),
  );
}

function placedFindings(pages: readonly PlacedReview[]): readonly Finding[] {
  return pages.flatMap(({ placed, reviewed }) =>
    reviewed.findings.map((finding) => ({ ...finding, span: shifted(finding.span, placed.start) })),
  );
}

/** Two titles that differ: the one of the front matter is printed, the heading is checked. */
function titleProblems({ title: heading, frontMatter: { title } }: Story): readonly Problem[] {
  if (title === undefined || heading === undefined || heading.text === title.value) return [];
  return [
    {
      message: `The heading says “${heading.text}”. What is printed and listed is this title.`,
      span: title.span,
      severity: 'information',
    },
  ];
}

function pronunciationProblems({ story, phonics }: ReviewInput): readonly Problem[] {
  return story.frontMatter.pronunciations.flatMap(({ word, graphemes }) => {
    const read = readAuthor(word.value, graphemes.value, phonics);
    if ('reading' in read) return [];
    const { start, end } = graphemes.span;
    // Between quotation marks or with escapes the value's offsets are not the file's.
    const isPlain = end - start === graphemes.value.length;
    const span = isPlain ? { start: start + read.start, end: start + read.end } : graphemes.span;
    return [
      { message: `${read.message} The pronunciation is not used.`, span, severity: 'warning' as const },
    ];
  });
}
