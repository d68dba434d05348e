import type { Phonics } from '../phonics/phonics.ts';
import { areSaidAlike } from '../phonics/said-alike.ts';
import type { ListedWord } from '../phonics/word-list.ts';
import { type ReviewContext, reviewContext } from '../review/review-context.ts';
import { reviewWord } from '../review/review-word.ts';
import type { Taught } from '../sequence/taught.ts';
import type { Teaching } from '../sequence/teaching.ts';
import { foldedWord } from '../text/folded-word.ts';
import { candidatesAt } from './candidates.ts';
import type { FoundWord, FoundWords } from './found-word.ts';
import { createLessonSieve, type LessonSieve } from './lesson-sieve.ts';
import { isWanted, mayBeWanted } from './match-query.ts';
import { indexWords, type WordIndex } from './word-index.ts';
import type { WordQuery } from './word-query.ts';

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
  return (
    kind === 'high-frequency' || reading === undefined || usual === undefined || areSaidAlike(reading, usual)
  );
}

/** A high-frequency word with the capitals the sequence gives it. */
function writtenForm(word: string, kind: FoundWord['kind'], taught: Taught): string {
  if (kind !== 'high-frequency') return word;
  const written = taught
    .highFrequencyLesson(word)
    ?.highFrequencyWords.find(({ value }) => foldedWord(value) === foldedWord(word));
  return written?.value ?? word;
}
