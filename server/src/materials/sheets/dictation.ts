import type { Review } from '../../review/review.ts';
import type { PlacedPage, Sentence } from '../../story/story.ts';

/** How many sentences are dictated at most. */
const most = 3;

/**
 * Sentences of the story to dictate: every word of them can be read at the lesson or is a name, and they use as many
 * new spellings and new words as can be; each once, in the order of the story.
 */
export function dictationSentences(review: Review): readonly { placed: PlacedPage; sentence: Sentence }[] {
  const seen = new Set<string>();
  const candidates = review.pages.flatMap(({ placed, reviewed }) => {
    const bySpan = new Map(reviewed.words.map((each) => [each.word.span.start, each]));
    return placed.page.sentences.flatMap((sentence) => {
      const words = sentence.words.map((word) => bySpan.get(word.span.start));
      const isFit =
        words.length >= 2 &&
        words.every((word) => word !== undefined && word.kind !== 'not-taught' && word.kind !== 'story-word');
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
