import type { AlignedPart } from '../phonics/align.ts';
import type { Phonics } from '../phonics/phonics.ts';
import { type Ending, endings } from '../phonics/reading.ts';
import type { ListedWord } from '../phonics/word-list.ts';
import { mayCover } from '../sequence/may-cover.ts';
import type { Taught } from '../sequence/taught.ts';
import type { Teaching } from '../sequence/teaching.ts';
import { foldedWord } from '../text/folded-word.ts';
import { letterBits, type WordIndex } from './word-index.ts';

/**
 * The words that may be readable at a lesson, the most useful first: those a quick look at their parts does not rule out,
 * the high-frequency words with their forms, and the words whose pronunciation the sequence gives. Lazy, since a short
 * list needs few of them.
 */
export function* candidatesAt(
  index: WordIndex,
  teaching: Teaching,
  taught: Taught,
  phonics: Phonics,
): Iterable<ListedWord> {
  const { lesson, sequence } = taught;
  const lessons = sequence.lessons.slice(0, lesson.index + 1);
  const isSure = new Uint8Array(index.words.length);
  const given = wordsGiven(taught);
  // A compound with a word in it that is taught as a whole is not read by its letters alone: *something*.
  for (const { word, halves } of index.compounds) {
    if (halves.some((half) => given.has(half))) {
      for (const place of index.placesOf(word)) isSure[place] = 1;
    }
  }
  for (const word of given) {
    const places = index.placesOf(word);
    for (const place of places) isSure[place] = 1;
    const own = places.length === 0 ? unlisted(word, phonics) : undefined;
    if (own !== undefined) yield own;
  }
  const open: ReadonlySet<Ending> = new Set(
    sequence.mentions.has('endings')
      ? lessons.flatMap((each) => each.endings.map(({ value }) => value))
      : endings,
  );
  const spellings = teaching.spellings.filter((spelling) => spelling.lesson.index <= lesson.index);
  const taughtLetters = letterBits(
    spellings.flatMap(({ pattern }) => pattern.map(({ letters }) => letters)).join(''),
  );
  const mayHold = remembered(mayCover(spellings, phonics));
  const answers = new Map<number, boolean>();
  const mayBeReadAt = (place: number): boolean => {
    let answer = answers.get(place);
    if (answer === undefined) {
      answer = looksReadable(place);
      answers.set(place, answer);
    }
    return answer;
  };
  /** A form is read as its base is; what the list does not have may be readable. */
  const looksReadable = (place: number): boolean => {
    const forms = index.formsAt(place);
    return (index.words[place]?.readings ?? []).some(({ parts }, at) => {
      const form = forms?.[at];
      if (form === undefined) return parts.every(mayHold);
      return (
        open.has(form.ending) &&
        (form.base === undefined || isSure[form.base] === 1 || mayBeReadAt(form.base))
      );
    });
  };
  for (let place = 0; place < index.words.length; place++) {
    // The letters rule out most words at most lessons without a look at the word itself.
    if (((index.letters[place] ?? 0) & ~taughtLetters) !== 0 && isSure[place] !== 1) continue;
    const listed = index.words[place];
    if (listed !== undefined && (isSure[place] === 1 || mayBeReadAt(place))) yield listed;
  }
}

/** The words that the sequence itself says something of by this lesson. */
function wordsGiven({ sequence, lesson }: Taught): ReadonlySet<string> {
  const taught = sequence.lessons.slice(0, lesson.index + 1).flatMap((each) => each.highFrequencyWords);
  const pronounced = sequence.pronunciations.map(({ word }) => word);
  return new Set([...taught, ...pronounced].map(({ value }) => foldedWord(value)));
}

/** A word that the sequence names and the list does not have; nothing when it is never offered. */
function unlisted(word: string, phonics: Phonics): ListedWord | undefined {
  if (phonics.words.unfitFor(word) !== undefined) return undefined;
  return { word, band: 0, partsOfSpeech: 0, isFamiliar: true, readings: [] };
}

/** The lexicon has one object for each part there is, so the answer for each is kept. */
function remembered(test: (part: AlignedPart) => boolean): (part: AlignedPart) => boolean {
  const known = new Map<AlignedPart, boolean>();
  return (part) => {
    let answer = known.get(part);
    if (answer === undefined) {
      answer = test(part);
      known.set(part, answer);
    }
    return answer;
  };
}
