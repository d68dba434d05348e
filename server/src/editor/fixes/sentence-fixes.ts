import { splitsOf } from '../../fixes/split-sentence.ts';
import { declarationsOf } from '../../review/declarations.ts';
import type { Finding } from '../../review/review.ts';
import { type ReviewContext, reviewContext } from '../../review/review-context.ts';
import { reviewWord } from '../../review/review-word.ts';
import type { Word } from '../../story/story.ts';
import { shifted } from '../../text/span.ts';
import { formsOf } from '../../words/word-forms.ts';
import type { Fix, Knowledge, Reviewed } from './fix.ts';

/** For a sentence that is too long: two of it, with words the children can read. */
export function sentenceFixes(
  finding: Finding,
  { review }: Reviewed,
  { phonics, thesaurus }: Knowledge,
): readonly Fix[] {
  if (thesaurus === undefined) return [];
  const { taught, story } = review;
  const declared = declarationsOf(story.frontMatter);
  const context = reviewContext(taught, phonics, story.frontMatter);
  for (const { placed } of review.pages) {
    const { page, start } = placed;
    if (finding.span.start < start || finding.span.start >= start + page.source.length) continue;
    const sentence = page.sentences.find(
      ({ span }) => span.start + start <= finding.span.start && finding.span.end <= span.end + start,
    );
    if (sentence === undefined) continue;
    const splits = splitsOf({
      sentence,
      source: page.source,
      grammar: {
        words: sentence.words.map(({ text }) => text),
        formsOf: (word) => formsOf(word, thesaurus, phonics),
        isName: (word) => declared.isName(word),
      },
      canRead: (text) => canRead(text, context),
    });
    return splits.map(({ edit, halves, words }, index) => ({
      title: `Split: ${halves.join(' ')}`,
      file: 'story',
      edits: [{ span: shifted(edit.span, start), text: edit.text }],
      isSure: index === 0 && Math.max(...words) <= taught.targets.sentence,
    }));
  }
  return [];
}

function canRead(text: string, context: ReviewContext): boolean {
  const word: Word = { text, span: { start: 0, end: text.length }, form: 'word', opensSentence: true };
  return reviewWord(word, { words: [word], index: 0 }, context).kind !== 'not-taught';
}
