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
import { failsStory } from './severity.ts';

/** What a review is a function of. */
export interface ReviewInput {
  readonly story: Story;
  /** What the children have been taught by the story's lesson. */
  readonly taught: Taught;
  /** The one that `taught` was made with. */
  readonly phonics: Phonics;
  /** Problems of the front matter that only the host can see, such as a sequence outside the workspace. */
  readonly frontMatterProblems?: readonly Problem[];
}

/**
 * Reviews a story at its lesson. Pure: the same input gives an equal review, whatever `previous` is.
 *
 * `previous` is an earlier review of the same document. As long as `taught` is the same object and the front matter says
 * the same of every word, pages that are the same objects keep their review, and only the changed ones are read anew.
 */
export function reviewStory(input: ReviewInput, previous?: Review): Review {
  const { story, taught } = input;
  const context = reviewContext(taught, input.phonics, story.frontMatter);
  const pages = reviewedPages(story, context, previous);
  const title = reviewWords(story.title?.words ?? [], context);
  const counts = summedCounts(pages.map(({ reviewed }) => reviewed.counts));
  const uses = placedUses(pages, taught);
  const findings = inOrder([
    ...frontMatterFindings([...story.frontMatter.problems, ...(input.frontMatterProblems ?? [])]),
    ...frontMatterFindings(pronunciationProblems(input)),
    ...storyFindings({ story, taught, counts, uses }),
    ...wordFindings(title, context),
    ...pages.flatMap(({ placed, reviewed }) =>
      reviewed.findings.map((found) => movedBy(found, placed.start)),
    ),
  ]);
  return {
    story,
    taught,
    pages,
    title,
    counts,
    readable: readableShare(counts),
    decodable: decodableShare(counts),
    target: taught.targets.readable / 100,
    passes: !findings.some(failsStory),
    practice: uses.practice,
    newWordUses: taught.newHighFrequencyWords.map((word, index) => ({
      word,
      spans: uses.newWords[index] ?? [],
    })),
    newSpellingUses: taught.newSpellings.map((spelling, index) => ({
      spelling,
      spans: uses.newSpellings[index] ?? [],
    })),
    findings,
  };
}

function reviewedPages(story: Story, context: ReviewContext, previous?: Review): readonly PlacedReview[] {
  const known = new Map<Page, ReviewedPage>();
  if (
    previous?.taught === context.taught &&
    declarationsOf(previous.story.frontMatter).key === context.declared.key
  ) {
    for (const { placed, reviewed } of previous.pages) known.set(placed.page, reviewed);
  }
  return story.pages.map((placed) => ({
    placed,
    reviewed: known.get(placed.page) ?? reviewPage(placed.page, context),
  }));
}

function placedUses(pages: readonly PlacedReview[], taught: Taught): PageUses {
  const newWords = taught.newHighFrequencyWords.map((): Span[] => []);
  const newSpellings = taught.newSpellings.map((): Span[] => []);
  const storyWords = new Set<string>();
  let practice = 0;
  for (const { placed, reviewed } of pages) {
    const { uses } = reviewed;
    appendMoved(newWords, uses.newWords, placed.start);
    appendMoved(newSpellings, uses.newSpellings, placed.start);
    for (const word of uses.storyWords) storyWords.add(word);
    practice += uses.practice;
  }
  return { newWords, newSpellings, practice, storyWords };
}

function appendMoved(all: readonly Span[][], page: readonly (readonly Span[])[], by: number): void {
  for (let index = 0; index < page.length; index++) {
    for (const span of page[index] ?? []) all[index]?.push(shifted(span, by));
  }
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

function movedBy(finding: Finding, by: number): Finding {
  return { ...finding, span: shifted(finding.span, by) };
}
