import type { Phonics } from '../phonics/phonics.ts';
import type { Reading } from '../phonics/reading.ts';
import type { Accent } from '../phonics/sound-classes.ts';
import { foldedWord } from '../text/folded-word.ts';
import type { Problem } from '../text/problem.ts';
import { contradictions, type PlacedSpelling } from './contradictions.ts';
import { type PartBasis, partBases } from './explain.ts';
import { judged } from './judge.ts';
import { plainMark } from './punctuation-mark.ts';
import { resolveSpelling } from './resolve-spelling.ts';
import type { Lesson, Sequence, Targets } from './sequence.ts';
import type { Taught, TaughtSpelling, Verdict } from './taught.ts';
import { indexOf, patternKeys, type TaughtIndex } from './taught-index.ts';
import { demandsOf, type WordDemands } from './word-demands.ts';

/** A sequence with its spellings resolved: what has been taught by the end of any of its lessons. Immutable and shared. */
export interface Teaching {
  readonly sequence: Sequence;
  /** All problems of the file, those of key words among them, in the order of the file. Worked out when first asked for. */
  readonly problems: readonly Problem[];
  /** Every spelling whose key word shows its sounds, in the order of the file, also one that an earlier line teaches. */
  readonly spellings: readonly TaughtSpelling[];
  /** The first lesson of this name; white space around it does not count. */
  lessonNamed(name: string): Lesson | undefined;
  /** What is taught by the end of the lesson of this name; the same object every time. */
  taughtAt(name: string): Taught | undefined;
  /** What is taught by the end of one of the sequence's lessons; the same object every time. */
  taughtBy(lesson: Lesson): Taught;
  /** What each part of a reading rests on, by the end of a lesson where it can, else by a later one. */
  partBases(reading: Reading, now: Lesson): readonly PartBasis[];
}

/** Resolves every spelling of a sequence and sets up its look-ups; what each lesson amounts to is worked out when asked. */
export function teachingOf(sequence: Sequence, allPhonics: Phonics): Teaching {
  const phonics = inAccent(allPhonics, sequence.accent);
  const { spellings, firstSpellings, findProblems } = resolvedSpellings(sequence, phonics);
  const index = indexOf(sequence, firstSpellings);
  const demands = new WeakMap<Reading, WordDemands>();
  const demandsOfReading = (reading: Reading): WordDemands => {
    const known = demands.get(reading);
    if (known !== undefined) {
      return known;
    }
    const worked = demandsOf(reading, index, phonics);
    demands.set(reading, worked);
    return worked;
  };
  const byName = new Map<string, Lesson>();
  for (const lesson of sequence.lessons) {
    if (!byName.has(lesson.name)) {
      byName.set(lesson.name, lesson);
    }
  }
  const taught = new Map<Lesson, Taught>();
  const taughtBy = (lesson: Lesson): Taught => {
    const known = taught.get(lesson);
    if (known !== undefined) {
      return known;
    }
    const worked = taughtOf(lesson, index, firstSpellings, {
      judge: (reading) => judged(demandsOfReading(reading), lesson, index, phonics),
      usesNewForm: (reading) => opensForm(lesson, demandsOfReading(reading), index),
    });
    taught.set(lesson, worked);
    return worked;
  };
  let problems: readonly Problem[] | undefined;
  return {
    sequence,
    get problems() {
      problems ??= [...sequence.problems, ...findProblems()].sort(
        (left, right) => left.span.start - right.span.start,
      );
      return problems;
    },
    spellings,
    lessonNamed: (name) => byName.get(name.trim()),
    taughtAt: (name) => {
      const lesson = byName.get(name.trim());
      return lesson === undefined ? undefined : taughtBy(lesson);
    },
    taughtBy,
    partBases: (reading, now) => partBases(reading, demandsOfReading(reading), now, index),
  };
}

function resolvedSpellings(sequence: Sequence, phonics: Phonics) {
  const spellings: TaughtSpelling[] = [];
  const finders: (() => Problem | undefined)[] = [];
  const placedSpellings: PlacedSpelling[] = [];
  const earlier = new Map<string, TaughtSpelling>();
  for (const lesson of sequence.lessons) {
    for (const placed of lesson.spellings) {
      const { pattern, problem } = resolveSpelling(placed, phonics);
      finders.push(problem);
      if (pattern === undefined) {
        continue;
      }
      const spelling: TaughtSpelling = { line: placed.value, lesson, pattern };
      spellings.push(spelling);
      const key = patternKeys(spelling).join(' + ');
      const first = earlier.get(key);
      if (first === undefined) {
        earlier.set(key, spelling);
        placedSpellings.push({ spelling, span: placed.span });
      } else if (foldedWord(first.line.keyWord) !== foldedWord(placed.value.keyWord)) {
        const message = `“${first.line.letters} as in ${first.line.keyWord}”, lesson ${first.lesson.name}, has the same sound and teaches this already.`;
        finders.push(() => ({ message, span: placed.span, severity: 'warning' }));
      }
    }
  }
  const findProblems = (): readonly Problem[] => [
    ...finders.flatMap((find) => find() ?? []),
    ...contradictions(placedSpellings, phonics),
  ];
  return { spellings, firstSpellings: [...earlier.values()], findProblems };
}

function taughtOf(
  lesson: Lesson,
  index: TaughtIndex,
  spellings: readonly TaughtSpelling[],
  { judge, usesNewForm }: Pick<Taught, 'judge' | 'usesNewForm'>,
): Taught {
  const { sequence } = index;
  const verdicts = new WeakMap<Reading, Verdict>();
  const isTaught = (found: Lesson | undefined): found is Lesson =>
    found !== undefined && found.index <= lesson.index;
  const ownWords = new Set<string>();
  return {
    sequence,
    lesson,
    targets: targetsAt(lesson, sequence),
    newSpellings: spellings.filter((spelling) => spelling.lesson === lesson),
    newHighFrequencyWords: lesson.highFrequencyWords
      .map(({ value }) => value)
      .filter((word) => {
        const folded = foldedWord(word);
        const isFirst = index.highFrequencyWords.get(folded) === lesson && !ownWords.has(folded);
        ownWords.add(folded);
        return isFirst;
      }),
    highFrequencyLesson: (word) => {
      const found = index.highFrequencyWords.get(foldedWord(word));
      return isTaught(found) ? found : undefined;
    },
    laterHighFrequencyLesson: (word) => {
      const found = index.highFrequencyWords.get(foldedWord(word));
      return isTaught(found) ? undefined : found;
    },
    punctuationLesson: (mark) => {
      const found = index.punctuation.get(plainMark(mark));
      // A stop ends every sentence: it is open unless the sequence makes a lesson of it.
      if (!sequence.mentions.has('punctuation') || (found === undefined && plainMark(mark) === '.')) {
        return 'open';
      }
      return isTaught(found) ? found : undefined;
    },
    laterPunctuationLesson: (mark) => {
      const found = index.punctuation.get(plainMark(mark));
      return isTaught(found) ? undefined : found;
    },
    judge: (reading) => {
      const known = verdicts.get(reading);
      if (known !== undefined) {
        return known;
      }
      const verdict = judge(reading);
      verdicts.set(reading, verdict);
      return verdict;
    },
    usesNewForm,
  };
}

/** True when a lesson opens an ending, a blend or the syllables that a word demands. */
function opensForm(lesson: Lesson, { endings, blends, syllables }: WordDemands, index: TaughtIndex): boolean {
  return (
    endings.some((ending) => index.endings.get(ending) === lesson) ||
    blends.some(({ place }) => index.blends.get(place) === lesson) ||
    (syllables > 1 && index.syllables.find(({ count }) => count >= syllables)?.lesson === lesson)
  );
}

function targetsAt(lesson: Lesson, sequence: Sequence): Targets {
  let targets = sequence.targets;
  for (const { targets: own } of sequence.lessons.slice(0, lesson.index + 1)) {
    targets = { ...targets, ...own };
  }
  return targets;
}

/** The same phonics with the sound classes of an accent. */
function inAccent(phonics: Phonics, accent: Accent): Phonics {
  if (accent === 'merged') return phonics;
  return { ...phonics, soundClass: (letters, sounds) => phonics.soundClass(letters, sounds, accent) };
}
