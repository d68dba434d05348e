import { partOfSpeech } from '../../phonics/lexicon.ts';
import { notated } from '../../phonics/notation.ts';
import type { Phonics } from '../../phonics/phonics.ts';
import type { Review } from '../../review/review.ts';
import { foldedWord } from '../../text/folded-word.ts';
import type { WordFinder } from '../../words/find-words.ts';
import { isTrouble, readSound, readSpelling } from '../../words/read-wish.ts';
import type { Settings } from '../protocol.ts';
import type { NoAnswer, WordsAnswer, WordsParams } from './protocol.ts';

/** The words of a lesson that are like the wish, or what cannot be meant by it. */
export function wordsAnswer(
  wish: WordsParams,
  review: Review,
  finder: WordFinder,
  phonics: Phonics,
  notation: Settings['sounds'],
): WordsAnswer | NoAnswer {
  const spelling = wish.spelling === undefined ? undefined : readSpelling(wish.spelling, phonics);
  const sound = wish.sound === undefined ? undefined : readSound(wish.sound);
  if (isTrouble(spelling)) return { message: spelling.trouble };
  if (isTrouble(sound)) return { message: sound.trouble };
  const { sounds, syllables, isUsed } = wish;
  const { words, hasMore } = finder.find(review.taught, {
    ...(spelling && { spelling }),
    ...(sound && { sound }),
    ...(wish.place && (spelling || sound) && { place: wish.place }),
    ...(sounds !== undefined && { sounds: { least: sounds, most: sounds } }),
    ...(syllables !== undefined && { syllables: { least: syllables, most: syllables } }),
    ...(wish.partOfSpeech && { partOfSpeech: partOfSpeech[wish.partOfSpeech] }),
    ...(isUsed !== undefined && { used: { words: wordsOf(review), isUsed } }),
    isNew: wish.isNew === true,
    limit: wish.limit,
  });
  return {
    lesson: review.taught.lesson.name,
    words: words.map(({ word, isNew, reading }) => ({
      word,
      isNew,
      sounds: (reading?.parts ?? []).map((part) => notated(part.sounds, notation, part.stress)).join(''),
    })),
    hasMore,
  };
}

function wordsOf({ story }: Review): ReadonlySet<string> {
  const words = [
    ...(story.title?.words ?? []),
    ...story.pages.flatMap(({ page }) => page.sentences.flatMap((sentence) => sentence.words)),
  ];
  return new Set(words.map(({ text }) => foldedWord(text)));
}
