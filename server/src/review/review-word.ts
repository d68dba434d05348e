import { readAuthor } from '../phonics/author-reading.ts';
import type { Reading } from '../phonics/reading.ts';
import type { Missing, Taught, TaughtSpelling } from '../sequence/taught.ts';
import type { Word } from '../story/story.ts';
import { foldedWord } from '../text/folded-word.ts';
import { fittingReadings, type PlaceInSentence } from './fitting-readings.ts';
import type { ReviewedWord, WordKind } from './review.ts';
import type { ReviewContext } from './review-context.ts';

/** Reviews the words of a sentence or heading, in their order. */
export function reviewWords(words: readonly Word[], context: ReviewContext): readonly ReviewedWord[] {
  return words.map((word, index) => reviewWord(word, { words, index }, context));
}

/**
 * Decides what a word is for the child: the first of `wordKinds` that holds. It is decodable when some reading that fits
 * its place lacks nothing. Numbers in digits and abbreviations (`12`, `Mr.`) say no sounds, have no reading and never are.
 */
export function reviewWord(word: Word, place: PlaceInSentence, context: ReviewContext): ReviewedWord {
  const { taught } = context;
  const readings =
    word.form === 'word'
      ? fittingReadings(readingsOf(word.text, context), place, context.phonics.heteronyms)
      : [];
  const newWord = newHighFrequencyWord(word, taught) !== undefined;
  for (const reading of readings) {
    const verdict = taught.judge(reading);
    if (verdict.missing.length > 0) continue;
    const newSpellings = newSpellingsAmong(verdict.uses, taught);
    const isNew = newWord || newSpellings.length > 0;
    return { word, kind: 'decodable', isNew, reading, missing: [], newSpellings };
  }
  const likeliest = readings[0];
  const endingsMissing = endingsMissingOf(readings, taught);
  const kind = endingsMissing?.length === 0 ? 'high-frequency' : kindWithoutReading(word, context);
  const missing =
    kind === 'not-taught' && likeliest !== undefined
      ? (endingsMissing ?? taught.judge(likeliest).missing)
      : [];
  return {
    word,
    kind,
    isNew: newWord,
    ...(likeliest === undefined ? {} : { reading: likeliest }),
    missing,
    newSpellings: [],
  };
}

/**
 * A child who was taught *want* as a whole word and the ending ed reads *wanted*: what its endings lack, nothing when
 * all are open; undefined when no reading is a taught whole word with endings.
 */
function endingsMissingOf(readings: readonly Reading[], taught: Taught): readonly Missing[] | undefined {
  for (const reading of readings) {
    for (let base = reading.inflection; base !== undefined; base = base.reading.inflection) {
      if (taught.highFrequencyLesson(base.base) !== undefined) {
        return taught.judge(reading).missing.filter(({ kind }) => kind === 'ending');
      }
    }
  }
  return undefined;
}

/** The new high-frequency word of the lesson that a word is, if any: its place in the lesson's list, from 0. */
export function newHighFrequencyWord(word: Word, taught: Taught): number | undefined {
  const form = listedForm(word.text);
  const index = taught.newHighFrequencyWords.findIndex((listed) => listedForm(listed) === form);
  return index === -1 ? undefined : index;
}

function kindWithoutReading(word: Word, { taught, declared }: ReviewContext): WordKind {
  const listed = listedForm(word.text);
  if (taught.highFrequencyLesson(listed) ?? taught.highFrequencyLesson(`${listed}.`)) return 'high-frequency';
  const forms = word.form === 'abbreviation' ? [word.text, withoutStop(word.text)] : [word.text];
  if (forms.some((form) => declared.isName(form))) return 'name';
  if (forms.some((form) => declared.storyWordOf(form) !== undefined)) return 'story-word';
  return 'not-taught';
}

/** `Mr.` and `Mr` are one word, however the sequence writes it. */
function listedForm(word: string): string {
  return withoutStop(foldedWord(word));
}

function withoutStop(word: string): string {
  return word.endsWith('.') ? word.slice(0, -1) : word;
}

function readingsOf(
  word: string,
  { phonics, declared, sequenceGraphemes }: ReviewContext,
): readonly Reading[] {
  const graphemes = declared.graphemesOf(word) ?? sequenceGraphemes.get(foldedWord(word));
  const given = graphemes === undefined ? undefined : readAuthor(word, graphemes, phonics);
  return given !== undefined && 'reading' in given ? [given.reading] : phonics.readingsOf(word);
}

function newSpellingsAmong(uses: readonly TaughtSpelling[], taught: Taught): readonly TaughtSpelling[] {
  return taught.newSpellings.filter((spelling) => uses.includes(spelling));
}
