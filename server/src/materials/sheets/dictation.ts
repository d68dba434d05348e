import type { Review } from '../../review/review.ts';
import type { PlacedPage, Sentence } from '../../story/story.ts';

/** How many sentences are dictated at most. */
const most = 3;

/**
 * Sentences of the story to dictate: nothing in them is marked, every word can be read at the lesson, and they use as many
 * new spellings and new words as can be; each once, in the order of the story.
 */
export function dictationSentences(review: Review): readonly { placed: PlacedPage; sentence: Sentence }[] {
  const seen = new Set<string>();
  const candidates = review.pages.flatMap(({ placed, reviewed }) => {
    const bySpan = new Map(reviewed.words.map((each) => [each.word.span.start, each]));
    return placed.page.sentences.flatMap((sentence) => {
      const words = sentence.words.map((word) => bySpan.get(word.span.start));
      const isMarked = review.findings.some(
        ({ span }) =>
          span.start >= placed.start + sentence.span.start && span.start < placed.start + sentence.span.end,
      );
      const isFit =
        words.length >= 2 &&
        !isMarked &&
        words.every((word) => word?.kind === 'decodable' || word?.kind === 'high-frequency');
      if (!isFit || seen.has(sentence.text)) return [];
      seen.add(sentence.text);
      const worth = words.filter((word) => word?.isNew === true).length;
      return [{ placed, sentence, worth }];
    });
  });
  const chosen = new Set(
    [...candidates.entries()]
      .sort(([one, { worth }], [other, { worth: otherWorth }]) => otherWorth - worth || one - other)
      .slice(0, most)
      .map(([index]) => index),
  );
  return candidates.filter((_, index) => chosen.has(index));
}
