import type { SequenceChoices } from './sequence-choices.ts';
import type { LessonPlan, SequencePlan } from './sequence-plan.ts';
import {
  blendSteps,
  consonantOrders,
  digraphs,
  firstEndings,
  highFrequencyWords,
  lastLetters,
  laterSpellings,
  longerWords,
  longVowels,
  shortVowels,
  type TeachingStep,
  vowelOrders,
} from './teaching-steps.ts';

/** A sequence by somebody's choices: every lesson opens new words, and nothing is taught twice. */
export function beginSequence(choices: SequenceChoices): SequencePlan {
  const { title, pace, words, lessons: most } = choices;
  const taught = grouped(stepsFor(choices), pace === 'small' ? 1 : 2).slice(0, most);
  const lessons = taught.map((steps, index) => ({
    ...lessonOf(steps),
    name: String(index + 1),
    ...wordsOf(index, words),
    ...targetsAt(index, taught.length),
  }));
  return { title, targets: firstTargets, lessons, remarks };
}

const remarks = [
  'A scope and sequence to begin with. Everything in it is yours to change: the order, the key words, the figures.',
  'What is taught stays taught. Point at the name of a lesson to see the words it opens up.',
];

const firstTargets = { readable: 95, sentence: 6, page: 14, practice: 8, repeats: 2, 'story words': 1 };

/** Longer sentences and pages in each quarter of the lessons. */
function targetsAt(index: number, count: number): Pick<LessonPlan, 'targets'> {
  const quarter = [1, 2, 3].find((each) => index > 0 && index === Math.round((count * each) / 4));
  return quarter === undefined
    ? {}
    : {
        targets: {
          sentence: 6 + 2 * quarter,
          page: 14 + 8 * quarter,
          'story words': Math.min(3, quarter + 1),
        },
      };
}

function wordsOf(index: number, words: number): Pick<LessonPlan, 'highFrequencyWords'> {
  // The first lesson has one more: no sentence can do without them.
  const from = index === 0 ? 0 : index * words + 1;
  const own = highFrequencyWords.slice(from, (index + 1) * words + 1);
  return own.length === 0 ? {} : { highFrequencyWords: own };
}

/** All steps in their order, forms that are not to be checked left out. */
function stepsFor({ vowels, consonants, blends, endings }: SequenceChoices): readonly TeachingStep[] {
  const letters = vowelOrders[vowels].map((vowel, index): TeachingStep => {
    const spellings = [...(consonantOrders[consonants][index] ?? []), shortVowels[vowel] ?? ''];
    const named = spellings.map((spelling) => spelling.split(' ')[0]);
    const marks = [undefined, '?', '!', ',', undefined][index];
    return {
      title: `${named.slice(0, -1).join(', ')} and short ${vowel}`,
      spellings,
      ...(marks === undefined ? {} : { punctuation: [marks] }),
    };
  });
  const [first, ...further] = blends === 'before' ? [blendSteps, digraphs] : [digraphs, blendSteps];
  const early = endings === 'taught' ? firstEndings : [];
  const all = [
    ...letters,
    ...lastLetters,
    ...(first ?? []),
    ...further.flat(),
    ...early,
    ...longVowels,
    longerWords,
    ...laterSpellings,
  ];
  return all.map((step) => withoutUnchecked(step, blends, endings)).filter(teachesSomething);
}

function withoutUnchecked(
  { blends, endings, syllables, ...step }: TeachingStep,
  blendsWish: SequenceChoices['blends'],
  endingsWish: SequenceChoices['endings'],
): TeachingStep {
  const isBlendStep = blends !== undefined && blendsWish === 'unchecked';
  return {
    ...step,
    ...(isBlendStep && step.spellings !== undefined ? { title: 'nk' } : {}),
    ...(blends === undefined || blendsWish === 'unchecked' ? {} : { blends }),
    ...(endings === undefined || endingsWish === 'unchecked' ? {} : { endings }),
    ...(syllables === undefined || endingsWish === 'unchecked' ? {} : { syllables }),
  };
}

function teachesSomething({ spellings, blends, endings, syllables }: TeachingStep): boolean {
  return [spellings, blends, endings, syllables].some((each) => each !== undefined);
}

function grouped(steps: readonly TeachingStep[], size: number): readonly (readonly TeachingStep[])[] {
  const groups: TeachingStep[][] = [];
  for (const step of steps) {
    const last = groups.at(-1);
    // The first lesson has enough by itself.
    if (last === undefined || groups.length === 1 || last.length >= size) groups.push([step]);
    else last.push(step);
  }
  return groups;
}

function lessonOf(steps: readonly TeachingStep[]): Omit<LessonPlan, 'name'> {
  const all = <Item>(
    of: (step: TeachingStep) => readonly Item[] | undefined,
  ): readonly Item[] | undefined => {
    const items = steps.flatMap((step) => of(step) ?? []);
    return items.length === 0 ? undefined : items;
  };
  const lists = {
    spellings: all(({ spellings }) => spellings),
    endings: all(({ endings }) => endings),
    blends: all(({ blends }) => blends),
    punctuation: all(({ punctuation }) => punctuation),
    syllables: steps.find(({ syllables }) => syllables !== undefined)?.syllables,
  };
  return {
    title: steps.map(({ title }) => title).join('; '),
    ...Object.fromEntries(Object.entries(lists).filter(([, list]) => list !== undefined)),
  };
}
