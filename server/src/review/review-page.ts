import type { Page } from '../story/story.ts';
import type { Span } from '../text/span.ts';
import { countsOf } from './figures.ts';
import { frontMatterFindings, inOrder, pageFindings, wordFindings } from './findings.ts';
import type { PageUses, ReviewedPage, ReviewedWord } from './review.ts';
import type { ReviewContext } from './review-context.ts';
import { newHighFrequencyWord, reviewWords } from './review-word.ts';
import { failsStory } from './severity.ts';

/** Reviews one page by itself. Every span of the result is relative to the page. */
export function reviewPage(page: Page, context: ReviewContext): ReviewedPage {
  const words = page.sentences.flatMap((sentence) => reviewWords(sentence.words, context));
  const findings = inOrder([
    ...frontMatterFindings(page.problems),
    ...wordFindings(words, context),
    ...pageFindings(page, context),
  ]);
  return {
    words,
    counts: countsOf(words),
    findings,
    fails: findings.some(failsStory),
    uses: usesOf(words, context),
  };
}

function usesOf(words: readonly ReviewedWord[], { taught, declared }: ReviewContext): PageUses {
  const newWords = taught.newHighFrequencyWords.map((): Span[] => []);
  const newSpellings = taught.newSpellings.map((): Span[] => []);
  const storyWords = new Set<string>();
  let practice = 0;
  for (const { word, isNew, newSpellings: used } of words) {
    const storyWord = declared.storyWordOf(word.text);
    if (storyWord !== undefined) storyWords.add(storyWord);
    if (!isNew) continue;
    newWords[newHighFrequencyWord(word, taught) ?? -1]?.push(word.span);
    if (used.length > 0) practice++;
    for (const spelling of used) newSpellings[taught.newSpellings.indexOf(spelling)]?.push(word.span);
  }
  return { newWords, newSpellings, practice, storyWords };
}
