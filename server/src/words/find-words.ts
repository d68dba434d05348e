import type { AlignedPart } from '../phonics/align.ts';
import { isVowel } from '../phonics/phoneme.ts';
import type { Phonics } from '../phonics/phonics.ts';
import type { Part, Reading } from '../phonics/reading.ts';
import type { ListedWord } from '../phonics/word-list.ts';
import { type ReviewContext, reviewContext } from '../review/review-context.ts';
import { reviewWord } from '../review/review-word.ts';
import { placesOf } from '../sequence/resolve-spelling.ts';
import type { Taught } from '../sequence/taught.ts';
import type { Teaching } from '../sequence/teaching.ts';
import { foldedWord } from '../text/folded-word.ts';
import { candidatesAt } from './candidates.ts';
import type { FoundWord, FoundWords } from './found-word.ts';
import { createLessonSieve, type LessonSieve } from './lesson-sieve.ts';
import { indexWords, type WordIndex } from './word-index.ts';
import type { NumberRange, WantedSpelling, WordPlace, WordQuery } from './word-query.ts';

/** Finds words at the lessons of one sequence. */
export interface WordFinder {
  /**
   * The readable words that a query wants, the most useful for children first, those that can be read only in a less usual
   * pronunciation last; none that is unfit.
   */
  find(taught: Taught, query: WordQuery): FoundWords;
  /** What a word is at a lesson, by itself; undefined when it is not readable there or never offered. Any capitals. */
  wordAt(taught: Taught, word: string): FoundWord | undefined;
}

/** What words are looked at with at a lesson. */
interface AtLesson {
  readonly context: ReviewContext;
  readonly sieve: LessonSieve;
}

/**
 * Makes the finder of a sequence. `phonics` is the one that `teaching` was made with; `wordIndex` gives the index of its
 * words, where finders share one.
 */
export function createWordFinder(
  teaching: Teaching,
  phonics: Phonics,
  wordIndex: () => WordIndex = () => indexWords(phonics.words.all()),
): WordFinder {
  let index: WordIndex | undefined;
  /** Verdicts are kept for the lesson that was asked for last, by word. */
  let judged = new Map<string, FoundWord | undefined>();
  let lesson: AtLesson | undefined;
  const lessonAt = (taught: Taught): AtLesson => {
    if (lesson?.context.taught === taught) return lesson;
    judged = new Map();
    lesson = {
      context: reviewContext(taught, phonics),
      sieve: createLessonSieve(teaching, taught, phonics),
    };
    return lesson;
  };
  const judge = (listed: ListedWord, { context }: AtLesson): FoundWord | undefined => {
    const { word } = listed;
    if (!judged.has(word)) judged.set(word, judgedAlone(listed, context));
    return judged.get(word);
  };
  return {
    find: (taught, query) => {
      index ??= wordIndex();
      const at = lessonAt(taught);
      const { limit = Number.POSITIVE_INFINITY } = query;
      const words: FoundWord[] = [];
      const lessUsual: FoundWord[] = [];
      for (const listed of candidatesAt(index, at.sieve, phonics)) {
        if (!mayBeWanted(listed, query, taught, phonics)) continue;
        const found = judge(listed, at);
        if (found === undefined || !isWanted(found, query, phonics)) continue;
        if (!isAsUsuallySaid(found)) lessUsual.push(found);
        else if (words.length < limit) words.push(found);
        else return { words, hasMore: true };
      }
      const left = limit - words.length;
      return { words: [...words, ...lessUsual.slice(0, left)], hasMore: lessUsual.length > left };
    },
    wordAt: (taught, word) => {
      const listed = phonics.words.find(word);
      const at = lessonAt(taught);
      return listed && at.sieve.mayBeRead(listed) ? judge(listed, at) : undefined;
    },
  };
}

/** What `check` would say of the word alone in a sentence, when that is that it can be read. */
function judgedAlone(listed: ListedWord, context: ReviewContext): FoundWord | undefined {
  const text = listed.word === 'i' ? 'I' : listed.word;
  const word = { text, span: { start: 0, end: text.length }, form: 'word', opensSentence: false } as const;
  const { kind, reading, isNew, newSpellings } = reviewWord(word, { words: [word], index: 0 }, context);
  if (kind !== 'decodable' && kind !== 'high-frequency') return undefined;
  return {
    word: writtenForm(text, kind, context.taught),
    kind,
    ...(reading === undefined ? {} : { reading }),
    isNew,
    newSpellings,
    listed,
  };
}

/**
 * False for a word that can be read only as some people say it, *tube* with the sounds of *cute*: a poor example, which comes
 * after all others. The lexicon names the usual reading first.
 */
function isAsUsuallySaid({ kind, reading, listed: { readings } }: FoundWord): boolean {
  const [usual] = readings;
  if (kind === 'high-frequency' || reading === undefined || usual === undefined) return true;
  return soundsOf(reading.parts) === soundsOf(usual.parts);
}

function soundsOf(parts: readonly { readonly sounds: readonly string[] }[]): string {
  return parts.map(({ sounds }) => sounds.join(' ')).join(' ');
}

/** A high-frequency word with the capitals the sequence gives it. */
function writtenForm(word: string, kind: FoundWord['kind'], taught: Taught): string {
  if (kind !== 'high-frequency') return word;
  const written = taught
    .highFrequencyLesson(word)
    ?.highFrequencyWords.find(({ value }) => foldedWord(value) === foldedWord(word));
  return written?.value ?? word;
}

/** What can be told before a word is judged, so that few have to be. */
function mayBeWanted(listed: ListedWord, query: WordQuery, taught: Taught, phonics: Phonics): boolean {
  const { word, band, isFamiliar, inflection, readings } = listed;
  if (!query.includesRare && !isFamiliar && band < 2) return false;
  if (query.baseFormsOnly && inflection !== undefined) return false;
  if (query.used !== undefined && query.used.words.has(word) !== query.used.isUsed) return false;
  if (query.partOfSpeech !== undefined && (classesOf(listed, phonics) & query.partOfSpeech) === 0)
    return false;
  if (query.spelling !== undefined && !hasLetters(word, query.spelling.letters)) return false;
  if (query.isNew && !mayBeNew(listed, taught)) return false;
  const { sound, syllables } = query;
  if (readings.length === 0 || (sound === undefined && syllables === undefined)) return true;
  return readings.some(
    ({ parts }) =>
      (sound === undefined || parts.some(({ sounds }) => sounds.includes(sound))) &&
      (syllables === undefined || mayHaveSyllables(parts, syllables)),
  );
}

/** In a form a spelling may have lost its e (*baking*, *caring*) and a y may be an i (*cried*). */
function mayBeNew({ word, inflection }: ListedWord, taught: Taught): boolean {
  return (
    taught.newSpellings.some(({ line: { letters } }) => {
      if (hasLetters(word, letters)) return true;
      return (
        inflection !== undefined &&
        (letters.includes('y') ||
          hasLetters(word, letters.split('_')[0] ?? '') ||
          hasLetters(word, withoutE(letters)))
      );
    }) || taught.newHighFrequencyWords.some((each) => foldedWord(each) === word)
  );
}

function withoutE(letters: string): string {
  return letters.endsWith('e') && letters.length > 1 ? letters.slice(0, -1) : letters;
}

/** Vowel sounds are one syllable each, but for such as that of *fire*. */
function mayHaveSyllables(parts: readonly AlignedPart[], { least, most }: NumberRange): boolean {
  const vowelSounds = parts.reduce((sum, { sounds }) => sum + sounds.filter(isVowel).length, 0);
  return vowelSounds >= least && vowelSounds <= most + 1;
}

function classesOf(listed: ListedWord, phonics: Phonics): number {
  let word: ListedWord | undefined = listed;
  while (word !== undefined && word.partsOfSpeech === 0 && word.inflection !== undefined) {
    word = phonics.words.find(word.inflection.base);
  }
  return word?.partsOfSpeech ?? 0;
}

function hasLetters(word: string, letters: string): boolean {
  let from = 0;
  for (const run of letters.split('_')) {
    const at = word.indexOf(run, from);
    if (at < 0) return false;
    from = at + run.length;
  }
  return true;
}

function isWanted({ reading, isNew }: FoundWord, query: WordQuery, phonics: Phonics): boolean {
  if (query.isNew && !isNew) return false;
  const { spelling, sound, place, sounds, syllables } = query;
  if (spelling === undefined && sound === undefined && sounds === undefined && syllables === undefined) {
    return true;
  }
  if (reading === undefined) return false;
  if (sounds && !isWithin(soundCount(reading), sounds)) return false;
  if (syllables && !isWithin(reading.syllables.length, syllables)) return false;
  if (spelling && !hasSpelling(reading, spelling, place, phonics)) return false;
  return sound === undefined || hasSound(reading, query);
}

function soundCount({ parts }: Reading): number {
  return parts.reduce((sum, { sounds }) => sum + sounds.length, 0);
}

function isWithin(count: number, { least, most }: NumberRange): boolean {
  return count >= least && count <= most;
}

function hasSpelling(
  reading: Reading,
  { letters, pattern }: WantedSpelling,
  place: WordPlace | undefined,
  phonics: Phonics,
): boolean {
  const soundsOf = (parts: readonly Pick<Part, 'letters' | 'sounds'>[]): string =>
    parts.map((part) => phonics.soundClass(part.letters, part.sounds)).join(' ');
  return placesOf(letters, reading).some(
    (parts) =>
      (pattern === undefined || soundsOf(parts) === soundsOf(pattern)) &&
      parts.some((part) => stands(reading.parts.indexOf(part), reading, place)),
  );
}

function hasSound(reading: Reading, { sound, spelling, place }: WordQuery): boolean {
  return reading.parts.some(
    ({ sounds }, at) =>
      sound !== undefined &&
      sounds.includes(sound) &&
      // With a spelling the place is the spelling's.
      (spelling !== undefined || stands(at, reading, place)),
  );
}

function stands(at: number, { parts }: Reading, place: WordPlace | undefined): boolean {
  switch (place) {
    case undefined:
      return true;
    case 'start':
      return at === 0;
    case 'end':
      return at === parts.length - 1;
    case 'middle':
      return at > 0 && at < parts.length - 1;
  }
}
