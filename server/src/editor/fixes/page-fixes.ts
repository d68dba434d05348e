import { breakPageAt } from '../../fixes/break-page.ts';
import { placesForWord } from '../../fixes/places-for-word.ts';
import { takeIndentAway } from '../../fixes/take-indent-away.ts';
import type { TextEdit } from '../../fixes/text-edit.ts';
import type { Finding } from '../../review/review.ts';
import { reviewContext } from '../../review/review-context.ts';
import type { Fix, Knowledge, Reviewed } from './fix.ts';

/** Places where the missing word could stand for another one. The finding's message names the word. */
export function highFrequencyFixes(
  { message }: Finding,
  { review }: Reviewed,
  { phonics, thesaurus }: Knowledge,
): readonly Fix[] {
  const missing = review.newWordUses.find(({ word }) => message.includes(`“${word}”`));
  if (thesaurus === undefined || missing === undefined) return [];
  const context = reviewContext(review.taught, phonics, review.story.frontMatter);
  return placesForWord(missing.word, review, context, thesaurus).map(({ original, page, edits }) => ({
    title: `Use “${missing.word}” for “${original}” on page ${page}`,
    file: 'story',
    edits,
    isSure: false,
  }));
}

/** For a page that is too long. */
export function pageFixes({ span }: Finding, { review }: Reviewed): readonly Fix[] {
  const { pages, text } = review.story;
  const placed = [...pages].reverse().find(({ start }) => start <= span.start);
  const edit = placed && breakPageAt(text, placed, span.start);
  return edit === undefined
    ? []
    : [{ title: 'Begin a new page here', file: 'story', edits: [edit], isSure: false }];
}

/** A mark that only adds force may become a full stop; a question stays one. */
export function markFixes({ span }: Finding, { review }: Reviewed): readonly Fix[] {
  const mark = review.story.text.slice(span.start, span.end);
  if (mark !== '!' && mark !== '\u2026' && mark !== '...') return [];
  const edits: readonly TextEdit[] = [{ span, text: '.' }];
  return [{ title: `Write a full stop for “${mark}”`, file: 'story', edits, isSure: false }];
}

/** For what stands in the text and is not read as it is meant: a picture without its brackets, lines that are code. */
export function textFixes({ span }: Finding, { review }: Reviewed): readonly Fix[] {
  if (review.story.text.startsWith('![', span.start)) {
    const edits: readonly TextEdit[] = [{ span: { start: span.end, end: span.end }, text: '()' }];
    return [{ title: 'Write () behind the note of the picture', file: 'story', edits, isSure: true }];
  }
  const edits = takeIndentAway(review.story.text, span.start);
  return edits.length === 0 ? [] : [{ title: 'Take the indent away', file: 'story', edits, isSure: true }];
}
