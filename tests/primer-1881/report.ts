import type { Phonics } from '../../server/src/phonics/phonics.ts';
import type { Review, ReviewedWord } from '../../server/src/review/review.ts';
import type { Missing } from '../../server/src/sequence/taught.ts';
import { lessonsOf, type PrimerLesson } from './lessons.ts';
import { reviewsOf, runningWords } from './reviews.ts';

/** The report of the whole book in markdown: a table with a row a lesson, then one of the spellings that words lack. */
export function reportOf(jsonLines: string, phonics: Phonics): string {
  const lessons = lessonsOf(jsonLines);
  const bySounds = reviewsOf(lessons, 'sounds', phonics);
  const byWords = reviewsOf(lessons, 'sounds and words', phonics);
  return [
    '## Lesson by lesson',
    '',
    '(a) by the listed sounds alone: the readable share, and what the other running words are. *Later*: all that the word',
    'lacks is listed in a later lesson. *Never*: it lacks a spelling that the book never lists. (b) by the listed sounds and',
    'the listed words.',
    '',
    '| lesson | running words | (a) readable | later | never | name | (b) readable | words that fall out under (b), and why |',
    '|---:|---:|---:|---:|---:|---:|---:|---|',
    ...lessonRows(lessons, bySounds, byWords),
    '',
    '## What the words lack under (a)',
    '',
    '| spelling | listed in lesson | running words | such as |',
    '|---|---|---:|---|',
    ...lackRows(bySounds),
    '',
    '## Listed words when they are listed',
    '',
    soundedOut(lessons, bySounds),
    '',
  ].join('\n');
}

function lessonRows(
  lessons: readonly PrimerLesson[],
  bySounds: readonly Review[],
  byWords: readonly Review[],
): readonly string[] {
  const listedIn = firstListed(lessons);
  const rows = lessons.map((lesson, index) => {
    const sounds = bySounds[index];
    const words = byWords[index];
    if (!sounds || !words) throw new Error(`Lesson ${lesson.lesson} has no review.`);
    const fallen = new Map<string, number>();
    for (const { word, kind } of runningWords(words)) {
      const text = word.text.toLowerCase();
      if (kind !== 'decodable' && kind !== 'high-frequency') fallen.set(text, (fallen.get(text) ?? 0) + 1);
    }
    const list = [...fallen].map(
      ([word, times]) => `${word}${times > 1 ? ` × ${times}` : ''}: ${whyFallen(word, listedIn)}`,
    );
    return row(String(lesson.lesson), [sounds], [words], list.join('; '));
  });
  return [...rows, row('all', bySounds, byWords, '')];
}

function row(name: string, bySounds: readonly Review[], byWords: readonly Review[], why: string): string {
  const words = bySounds.flatMap(runningWords);
  const fallen = words.filter(({ kind }) => kind === 'not-taught');
  const never = fallen.filter(({ missing }) => missing.some(({ lesson }) => lesson === undefined)).length;
  const names = words.filter(({ kind }) => kind === 'name').length;
  const cells = [
    name,
    words.length,
    readable(bySounds),
    fallen.length - never,
    never,
    names,
    readable(byWords),
    why,
  ];
  return `| ${cells.join(' | ')} |`;
}

/** What the words of the book lack by the listed sounds, the most often missing first. */
function lackRows(bySounds: readonly Review[]): readonly string[] {
  const lacks = new Map<string, { readonly listed: string; words: number; readonly examples: Set<string> }>();
  for (const { word, missing } of bySounds.flatMap(runningWords)) {
    for (const lack of missing) {
      const name = nameOf(lack);
      const entry = lacks.get(name) ?? {
        listed: lack.lesson?.name ?? 'never',
        words: 0,
        examples: new Set(),
      };
      entry.words += 1;
      entry.examples.add(word.text.toLowerCase());
      lacks.set(name, entry);
    }
  }
  return [...lacks]
    .sort(([, one], [, other]) => other.words - one.words)
    .map(([name, { listed, words, examples }]) => {
      const shown = [...examples].slice(0, 6).join(', ');
      return `| ${name} | ${listed} | ${words} | ${shown}${examples.size > 6 ? ', …' : ''} |`;
    });
}

function nameOf(missing: Missing): string {
  if (missing.kind !== 'spelling') return missing.kind;
  return missing.keyWord === undefined
    ? missing.isWeak
      ? `a weak ${missing.letters}`
      : `${missing.letters} saying ${missing.sounds.join(' ')}`
    : `${missing.letters} as in ${missing.keyWord}`;
}

/** How many of the listed words that their own lesson's text uses can be sounded out there. */
function soundedOut(lessons: readonly PrimerLesson[], bySounds: readonly Review[]): string {
  let listed = 0;
  let decodable = 0;
  for (const [index, lesson] of lessons.entries()) {
    const review = bySounds[index];
    const words = review ? runningWords(review) : [];
    for (const listedWord of lesson.new_words) {
      const used = words.find(({ word }) => word.text.toLowerCase() === listedWord.toLowerCase());
      if (!used) continue;
      listed += 1;
      if (used.kind === 'decodable') decodable += 1;
    }
  }
  return `Of ${listed} words that a lesson lists and uses, ${decodable} can be sounded out there by the sounds listed so far; the others had to be learned as wholes.`;
}

function firstListed(lessons: readonly PrimerLesson[]): ReadonlyMap<string, number> {
  const listedIn = new Map<string, number>();
  for (const { lesson, new_words } of lessons) {
    for (const word of new_words) {
      if (!listedIn.has(word.toLowerCase())) listedIn.set(word.toLowerCase(), lesson);
    }
  }
  return listedIn;
}

function whyFallen(word: string, listedIn: ReadonlyMap<string, number>): string {
  const own = listedIn.get(word);
  if (own !== undefined) return `listed in ${own}`;
  const plural = listedIn.get(`${word}s`);
  if (plural !== undefined) return `only *${word}s* is listed (${plural})`;
  for (let end = 2; end < word.length - 1; end += 1) {
    const first = listedIn.get(word.slice(0, end));
    const second = listedIn.get(word.slice(end));
    if (first !== undefined && second !== undefined) {
      return `*${word.slice(0, end)}* (${first}) and *${word.slice(end)}* (${second}) are listed, not the two as one`;
    }
  }
  return 'no list has it';
}

/** The readable share of reviews together, as percent with one decimal, rounded down as everywhere. */
function readable(reviews: readonly Review[]): string {
  const of = (kinds: readonly ReviewedWord['kind'][]): number =>
    reviews.flatMap(runningWords).filter(({ kind }) => kinds.includes(kind)).length;
  const words = reviews.flatMap(runningWords).length;
  // Whole numbers divided once, so that rounding down is exact.
  return `${(Math.floor((of(['decodable', 'high-frequency']) * 1000) / words) / 10).toFixed(1)} %`;
}
