import { readAuthor } from '../phonics/author-reading.ts';
import type { Inflection, Reading } from '../phonics/reading.ts';
import { areSaidAlike } from '../phonics/said-alike.ts';
import type { Missing, Taught, TaughtSpelling } from '../sequence/taught.ts';
import type { Word } from '../story/story.ts';
import { foldedWord } from '../text/folded-word.ts';
import { withoutStop } from '../text/without-stop.ts';
import { fittingReadings, type PlaceInSentence, senseAt } from './fitting-readings.ts';
import type { ReviewedWord, WordKind, WordVerdict } from './review.ts';
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
  const { kind, isNew, reading, missing, newSpellings } = verdictOf(word, place, context);
  return reading === undefined
    ? { word, kind, isNew, missing, newSpellings }
    : { word, kind, isNew, reading, missing, newSpellings };
}

/** True for a word of which the rules say the same wherever it stands, in every story at the lesson. */
export function isMemorable({ form, text }: Word, { declared, phonics }: ReviewContext): boolean {
  return form === 'word' && !declared.mentions(text) && phonics.heteronyms.sensesOf(text) === undefined;
}

function verdictOf(word: Word, place: PlaceInSentence, context: ReviewContext): WordVerdict {
  const { declared, known, phonics } = context;
  if (word.form !== 'word') return judgedVerdict(word, [], context);
  const verdicts = declared.mentions(word.text) ? context.declaredVerdicts : known.verdicts;
  const alike = verdicts.get(word.text);
  // Only a word with one meaning is kept by its letters alone.
  if (alike !== undefined) return alike;
  const sense = senseAt(place, phonics.heteronyms);
  const key = sense === undefined ? word.text : `${word.text} ${sense}`;
  const judged =
    verdicts.get(key) ?? judgedVerdict(word, fittingReadings(readingsOf(word.text, context), sense), context);
  verdicts.set(key, judged);
  return judged;
}

function judgedVerdict(word: Word, readings: readonly Reading[], context: ReviewContext): WordVerdict {
  const { taught } = context;
  const newWord = newHighFrequencyWord(word, taught) !== undefined;
  for (const reading of readings) {
    const verdict = taught.judge(reading);
    if (verdict.missing.length > 0) continue;
    const newSpellings = newSpellingsAmong(verdict.uses, taught);
    const isNew = newWord || newSpellings.length > 0;
    return { kind: 'decodable', isNew, reading, missing: [], newSpellings };
  }
  const likeliest = readings[0];
  const formsMissing = formsMissingOf(readings, context);
  const kind = formsMissing?.length === 0 ? 'high-frequency' : kindWithoutReading(word, likeliest, context);
  const missing =
    kind === 'not-taught' && likeliest !== undefined ? (formsMissing ?? taught.judge(likeliest).missing) : [];
  return {
    kind,
    isNew: newWord,
    ...(likeliest === undefined ? {} : { reading: likeliest }),
    missing,
    newSpellings: [],
  };
}

/**
 * A child who was taught *want* as a whole word and the ending ed reads *wanted*, and one who reads *some* and *thing*
 * reads *something*: what such a word lacks in endings and syllables, nothing when all are open; undefined when no reading
 * is a taught whole word with endings, or a compound of taught words.
 */
function formsMissingOf(
  readings: readonly Reading[],
  context: ReviewContext,
): readonly Missing[] | undefined {
  const { taught } = context;
  for (const reading of readings) {
    if (isCompoundOfTaught(reading, context))
      return taught.judge(reading).missing.filter(({ kind }) => kind === 'syllables');
    for (let base = reading.inflection; base !== undefined; base = base.reading.inflection) {
      const { missing } = taught.judge(reading);
      if (taught.highFrequencyLesson(base.base) !== undefined && isSaidAlike(base, context))
        return missing.filter(({ kind }) => kind === 'ending');
      if (isCompoundOfTaught(base.reading, context))
        return missing.filter(({ kind }) => kind === 'ending' || kind === 'syllables');
    }
  }
  return undefined;
}

/** False for the base of a contraction that changes its vowel: who knows *do* does not know *don't*. */
function isSaidAlike({ base, reading }: Inflection, { phonics }: ReviewContext): boolean {
  return phonics.readingsOf(base).some((each) => areSaidAlike(each, reading));
}

/** True for a compound of two words that the child reads, one of them at least as a whole. */
function isCompoundOfTaught({ compound }: Reading, { taught, phonics }: ReviewContext): boolean {
  if (compound === undefined) return false;
  const isWhole = (word: string): boolean => taught.highFrequencyLesson(word) !== undefined;
  const isRead = (word: string): boolean =>
    isWhole(word) || phonics.readingsOf(word).some((reading) => taught.judge(reading).missing.length === 0);
  return compound.some(isWhole) && compound.every(isRead);
}

/** The new high-frequency word of the lesson that a word is, if any: its place in the lesson's list, from 0. */
export function newHighFrequencyWord(word: Word, taught: Taught): number | undefined {
  if (taught.newHighFrequencyWords.length === 0) return undefined;
  const form = listedForm(word.text);
  const index = taught.newHighFrequencyWords.findIndex((listed) => listedForm(listed) === form);
  return index === -1 ? undefined : index;
}

function kindWithoutReading(
  word: Word,
  likeliest: Reading | undefined,
  { taught, declared }: ReviewContext,
): WordKind {
  const listed = listedForm(likeliest?.drawnOutOf ?? word.text);
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

function readingsOf(
  word: string,
  { phonics, declared, sequenceGraphemes }: ReviewContext,
): readonly Reading[] {
  const graphemes =
    declared.graphemesOf(word) ??
    (sequenceGraphemes.size === 0 ? undefined : sequenceGraphemes.get(foldedWord(word)));
  const given = graphemes === undefined ? undefined : readAuthor(word, graphemes, phonics);
  return given !== undefined && 'reading' in given ? [given.reading] : phonics.readingsOf(word);
}

function newSpellingsAmong(uses: readonly TaughtSpelling[], taught: Taught): readonly TaughtSpelling[] {
  return taught.newSpellings.filter((spelling) => uses.includes(spelling));
}
