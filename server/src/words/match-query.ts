import type { AlignedPart } from '../phonics/align.ts';
import { isVowel } from '../phonics/phoneme.ts';
import type { Phonics } from '../phonics/phonics.ts';
import type { Part, Reading } from '../phonics/reading.ts';
import type { ListedWord } from '../phonics/word-list.ts';
import { placesOf } from '../sequence/resolve-spelling.ts';
import type { Taught } from '../sequence/taught.ts';
import { foldedWord } from '../text/folded-word.ts';
import type { FoundWord } from './found-word.ts';
import type { NumberRange, WantedSpelling, WordPlace, WordQuery } from './word-query.ts';

/** Whether a listed word may be what a query wants: what can be told before it is judged, so that few have to be. */
export function mayBeWanted(listed: ListedWord, query: WordQuery, taught: Taught, phonics: Phonics): boolean {
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

/** Whether a readable word is what a query wants; what `mayBeWanted` has told already is not asked again. */
export function isWanted({ reading, isNew }: FoundWord, query: WordQuery, phonics: Phonics): boolean {
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
