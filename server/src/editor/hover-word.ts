import { notated } from '../phonics/notation.ts';
import type { Phonics } from '../phonics/phonics.ts';
import type { Part, Reading, ReadingSource } from '../phonics/reading.ts';
import type { Review, ReviewedWord, WordKind } from '../review/review.ts';
import { lessonLabel, listed, whyNotTaught } from '../review/wording.ts';
import type { PartBasis } from '../sequence/explain.ts';
import { graphemesOf } from '../sequence/resolve-spelling.ts';
import type { Lesson } from '../sequence/sequence.ts';
import type { Teaching } from '../sequence/teaching.ts';
import { foldedWord } from '../text/folded-word.ts';
import { soundsOf } from './hover-lesson.ts';
import type { Settings } from './protocol.ts';
import { type Block, line, type Run } from './rich-text.ts';
import type { WordAt } from './word-at.ts';

/** What a hover on a word draws on. */
export interface WordContext {
  readonly review: Review;
  readonly teaching: Teaching;
  readonly phonics: Phonics;
  readonly notation: Settings['sounds'];
}

/** The sound breakdown of a word: what it is, its graphemes with the lessons that teach them, and why it cannot be read. */
export function wordBlocks({ reviewed }: WordAt, context: WordContext): readonly Block[] {
  const { word, reading } = reviewed;
  const { lesson } = context.review.taught;
  const state = kindPhrases[reviewed.kind](lesson) + (reviewed.isNew ? ' · new in this lesson' : '');
  const blocks: Block[] = [line({ strong: word.text }, ` · ${state}`)];
  if (reviewed.kind === 'not-taught') blocks.push(...whyBlocks(reviewed, context));
  if (reviewed.kind === 'story-word') blocks.push(...meaningBlocks(reviewed, context.review));
  if (reading === undefined) return blocks;
  blocks.push(partTable(reading, context));
  if (reading.syllables.length > 1) blocks.push(line('Syllables: ', ...syllableRuns(reading)));
  blocks.push(line(sourceSentence(reading)));
  const others = otherReadings(word.text, reading, context.phonics).map(
    (other) =>
      `${graphemesOf(other)} ${soundsOf(other, context.notation)}${meaningOf(word.text, other, context.phonics)}`,
  );
  if (others.length > 0) blocks.push(line(`Also read ${listed(others)}.`));
  return blocks;
}

/** What a heteronym means in a reading, in brackets. */
function meaningOf(word: string, reading: Reading, { heteronyms, readingsOf }: Phonics): string {
  const gloss = heteronyms.sensesOf(word)?.[readingsOf(word).indexOf(reading)]?.gloss;
  return gloss === undefined ? '' : ` (${gloss})`;
}

/** Readings that a listener would tell apart from the one shown; those that differ by accent alone are left out. */
function otherReadings(word: string, shown: Reading, phonics: Phonics): readonly Reading[] {
  const soundOf = ({ letters, sounds, stress }: Part): string =>
    stress === 0 && sounds.every((sound) => sound === 'AH' || sound === 'IH')
      ? 'reduced'
      : phonics.soundClass(letters, sounds);
  const soundsLike = ({ parts }: Reading): string =>
    parts.map((part) => `${part.letters} ${soundOf(part)}`).join(' ');
  const different = new Map<string, Reading>([[soundsLike(shown), shown]]);
  for (const reading of phonics.readingsOf(word)) {
    if (!different.has(soundsLike(reading))) different.set(soundsLike(reading), reading);
  }
  return [...different.values()].slice(1, mostOtherReadings + 1);
}

const mostOtherReadings = 4;

const kindPhrases: Readonly<Record<WordKind, (lesson: Lesson) => string>> = {
  decodable: (lesson) => `can be sounded out at ${lessonLabel(lesson)}`,
  'high-frequency': () => 'high-frequency word, taught as a whole',
  name: () => 'a name',
  'story-word': () => 'story word',
  'not-taught': (lesson) => `cannot be read yet at ${lessonLabel(lesson)}`,
};

const sourcePhrases: Readonly<Record<ReadingSource, string>> = {
  lexicon: 'The sounds are from the dictionary',
  ending: 'The sounds are those of a known word with an ending',
  compound: 'The sounds are those of the known words it is put together from',
  author: 'The sounds are as the writer has given them',
  rule: 'The word is in no list; its sounds were worked out by rule',
};

/** Where the sounds come from, and the base word of an inflected one. */
function sourceSentence({ source, inflection }: Reading): string {
  if (inflection === undefined) return `${sourcePhrases[source]}.`;
  const kind = inflection.ending === 'un' || inflection.ending === 're' ? 'beginning' : 'ending';
  return `${sourcePhrases[source]}: “${inflection.base}” with the ${kind} ${inflection.ending}.`;
}

function whyBlocks(reviewed: ReviewedWord, context: WordContext): Block[] {
  const from = readableFrom(reviewed, context);
  const prospect =
    from === undefined
      ? 'No lesson of this sequence makes it readable.'
      : `Readable from ${lessonLabel(from)}.`;
  return [line(whyNotTaught(reviewed, context.review.taught)), line(prospect)];
}

/** The first later lesson at which a child can read the word, sounded out or as a whole. */
function readableFrom(
  { word, reading }: ReviewedWord,
  { review, teaching, phonics }: WordContext,
): Lesson | undefined {
  const readings =
    reading?.source === 'author' ||
    word.form !== 'word' ||
    phonics.heteronyms.sensesOf(word.text) !== undefined
      ? [reading].filter((given) => given !== undefined)
      : phonics.readingsOf(word.text);
  return teaching.sequence.lessons.find((lesson) => {
    if (lesson.index <= review.taught.lesson.index) return false;
    const taught = teaching.taughtBy(lesson);
    return (
      taught.highFrequencyLesson(word.text) !== undefined ||
      readings.some((candidate) => taught.judge(candidate).missing.length === 0)
    );
  });
}

function meaningBlocks({ word }: ReviewedWord, { story }: Review): Block[] {
  const folded = foldedWord(word.text);
  const entry = story.frontMatter.storyWords.find(
    (candidate) => candidate.meaning !== '' && folded.startsWith(foldedWord(candidate.word)),
  );
  return entry === undefined ? [] : [line(`${entry.word}: ${entry.meaning}`)];
}

function partTable(reading: Reading, { review, teaching, notation }: WordContext): Block {
  const now = review.taught.lesson;
  const rows = teaching.partBases(reading, now).map((basis) => {
    const { letters, sounds, stress } = basis.part;
    const sound = sounds.length === 0 ? 'silent' : `/${notated(sounds, notation, stress)}/`;
    return [letters, sound, ...restOf(basis, now)];
  });
  return { kind: 'table', head: ['letters', 'sound', 'as in', 'lesson'], rows };
}

function restOf(basis: PartBasis, now: Lesson): readonly [asIn: string, lesson: string] {
  switch (basis.kind) {
    case 'spelling': {
      const { line: taught, lesson } = basis.spelling;
      const asIn =
        taught.letters === basis.part.letters ? taught.keyWord : `${taught.letters} as in ${taught.keyWord}`;
      return [asIn, taughtIn(lesson, now)];
    }
    case 'ending':
      return [
        `ending ${basis.ending}`,
        basis.lesson === undefined ? 'no lesson' : taughtIn(basis.lesson, now),
      ];
    case 'none':
      return ['', 'no lesson'];
  }
}

function taughtIn(lesson: Lesson, now: Lesson): string {
  return lesson.index > now.index ? `${lesson.name} (later)` : lesson.name;
}

function syllableRuns({ syllables }: Reading): Run[] {
  return syllables.flatMap(({ text, stress }, index) => [
    ...(index === 0 ? [] : ['·']),
    stress === 1 ? { strong: text } : text,
  ]);
}
