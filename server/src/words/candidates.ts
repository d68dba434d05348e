import type { Phonics } from '../phonics/phonics.ts';
import type { ListedWord } from '../phonics/word-list.ts';
import type { LessonSieve } from './lesson-sieve.ts';
import type { WordIndex } from './word-index.ts';

/**
 * The words that may be readable at a lesson, the most useful first: those its sieve lets through, the high-frequency words
 * with their forms, and the words whose pronunciation the sequence gives. Lazy, since a short list needs few of them.
 */
export function* candidatesAt(index: WordIndex, sieve: LessonSieve, phonics: Phonics): Iterable<ListedWord> {
  const isSure = new Uint8Array(index.words.length);
  // A compound with a word in it that is taught as a whole is not read by its letters alone: *something*.
  for (const { word, halves } of index.compounds) {
    if (halves.some((half) => sieve.given.has(half))) {
      for (const place of index.placesOf(word)) isSure[place] = 1;
    }
  }
  for (const word of sieve.given) {
    const places = index.placesOf(word);
    for (const place of places) isSure[place] = 1;
    const own = places.length === 0 ? unlisted(word, phonics) : undefined;
    if (own !== undefined) yield own;
  }
  const answers = new Map<number, boolean>();
  const mayBeReadAt = (place: number): boolean => {
    let answer = answers.get(place);
    if (answer === undefined) {
      answer = looksReadable(place);
      answers.set(place, answer);
    }
    return answer;
  };
  /** What the sieve says of a word, by the index: many words have the same base. */
  const looksReadable = (place: number): boolean => {
    const forms = index.formsAt(place);
    return sieve.someReading(index.words[place]?.readings ?? [], (at) => {
      const base = forms?.[at]?.base;
      return base === undefined || isSure[base] === 1 || mayBeReadAt(base);
    });
  };
  for (let place = 0; place < index.words.length; place++) {
    // The letters rule out most words at most lessons without a look at the word itself.
    if (((index.letters[place] ?? 0) & ~sieve.letters) !== 0 && isSure[place] !== 1) continue;
    const listed = index.words[place];
    if (listed !== undefined && (isSure[place] === 1 || mayBeReadAt(place))) yield listed;
  }
}

/** A word that the sequence names and the list does not have; nothing when it is never offered. */
function unlisted(word: string, phonics: Phonics): ListedWord | undefined {
  if (phonics.words.unfitFor(word) !== undefined) return undefined;
  return { word, band: 0, partsOfSpeech: 0, isFamiliar: true, readings: [] };
}
