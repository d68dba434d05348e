import { longestWord } from '../phonics/phonics.ts';
import type { Lesson } from '../sequence/sequence.ts';
import type { Missing, Taught } from '../sequence/taught.ts';
import { titles } from '../story/word-lists.ts';
import { withoutStop } from '../text/without-stop.ts';
import type { ReviewedWord } from './review.ts';

/**
 * Why a child cannot read a not-taught word, as one or two sentences: what is missing, with its key word, and the lesson
 * that will teach it or that none does; then the lesson, if any, that will teach the word as a whole.
 */
export function whyNotTaught({ word, reading, missing }: ReviewedWord, taught: Taught): string {
  if (word.text.length > longestWord) {
    return `“${word.text.slice(0, 20)}…” has ${word.text.length} letters. That is more than any English word has, so it is not read.`;
  }
  const named = `“${word.text}”`;
  const whole = taught.laterHighFrequencyLesson(word.text);
  const asWhole = whole === undefined ? '' : ` As a whole word, ${lessonLabel(whole)} teaches it.`;
  if (word.form === 'number') {
    const how = /^[IVX]+$/.test(word.text) ? 'as a Roman numeral, which' : 'in digits, which';
    return `${named} is written ${how} cannot be sounded out; write it in letters, or declare it a story word.${asWhole}`;
  }
  if (word.form === 'abbreviation') {
    const declaring = titles.has(withoutStop(word.text))
      ? 'with a name, as in names: [Mr. Plim]'
      : 'a story word';
    return `${named} is an abbreviation, which cannot be sounded out; a lesson can teach it as a high-frequency word, or the story declare it ${declaring}.${asWhole}`;
  }
  const outside = outsideSpelling(word.text);
  if (outside !== undefined) return `${named} ${outside}.${asWhole}`;
  if (reading === undefined)
    return `${named} has no letters that English spelling gives a sound to.${asWhole}`;
  return `${named} needs ${needsOf(missing)}.${asWhole}`;
}

/** Why the sounds of a letter's name (*b*) or of a written noise (*Shh*) have no spelling that a lesson could teach. */
function outsideSpelling(text: string): string | undefined {
  const instead = 'a lesson can teach it as a high-frequency word, or the story declare it a story word';
  if (/^[b-hj-z]$/i.test(text)) return `is a single letter, which is read by its name; ${instead}`;
  return /^[b-df-hj-np-tv-xz]+$/i.test(text)
    ? `has no vowel letter, so it cannot be sounded out like a word; ${instead}`
    : undefined;
}

/** Missing things with their lessons: `ea as in eat, which lesson 9 teaches, and th as in this, which no lesson teaches`. */
function needsOf(missing: readonly Missing[]): string {
  const byLesson = new Map<string, Set<string>>();
  for (const thing of missing) {
    const that = lessonThat(thing.lesson, thing.kind === 'spelling' ? 'teaches' : 'opens');
    byLesson.set(that, (byLesson.get(that) ?? new Set()).add(missingLabel(thing)));
  }
  return listed([...byLesson].map(([that, things]) => `${listed([...things])}, which ${that}`));
}

/** A missing thing in words: `igh as in light`, `a weak e`, `the short form 't`, `the ending ing`, `the blend st at its start`, `words of 3 syllables`. */
export function missingLabel(missing: Missing): string {
  switch (missing.kind) {
    case 'spelling':
      if (missing.isWeak) return `a weak ${missing.letters}`;
      if (missing.letters.startsWith("'") && missing.lesson === undefined)
        return `the short form ${missing.letters}`;
      if (missing.keyWord !== undefined) return `${missing.letters} as in ${missing.keyWord}`;
      return missing.sounds.length === 0
        ? `a silent ${missing.letters}`
        : `${missing.letters} as it sounds here`;
    case 'ending':
      return missing.ending === 'un' || missing.ending === 're'
        ? `the beginning ${missing.ending}`
        : `the ending ${missing.ending}`;
    case 'blend':
      if (missing.blend === 'three') return `three consonants in a row (${missing.letters})`;
      return `the blend ${missing.letters} at its ${missing.blend}`;
    case 'syllables':
      return missing.syllables === 1 ? 'words of 1 syllable' : `words of ${missing.syllables} syllables`;
  }
}

/** `lesson 21`; a name that is more than a number or word stands in quotation marks: `lesson “Unit 3 b”`. */
export function lessonLabel(lesson: Lesson): string {
  if (/^lesson\b/i.test(lesson.name)) return `“${lesson.name}”`;
  return /^[\p{L}\p{N}.]+$/u.test(lesson.name) ? `lesson ${lesson.name}` : `lesson “${lesson.name}”`;
}

/** `lesson 21 teaches`, or `no lesson teaches`. */
export function lessonThat(lesson: Lesson | undefined, verb: string): string {
  return `${lesson === undefined ? 'no lesson' : lessonLabel(lesson)} ${verb}`;
}

/** `1 word`, `3 words`; the plural is the singular with s unless given. */
export function counted(count: number, singular: string, plural = `${singular}s`): string {
  return `${count} ${count === 1 ? singular : plural}`;
}

/** `a`, `a and b`, `a, b and c`; parts that hold a comma themselves are set off by one more: `a, x, and b, y`. */
export function listed(items: readonly string[]): string {
  const last = items.at(-1) ?? '';
  if (items.length < 2) return last;
  const before = items.slice(0, -1).join(', ');
  return items.some((item) => item.includes(',')) ? `${before}, and ${last}` : `${before} and ${last}`;
}
