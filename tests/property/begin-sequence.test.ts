import { describe, expect, test } from 'vitest';
import { readSequence } from '../../server/src/sequence/read-sequence.ts';
import { type Teaching, teachingOf } from '../../server/src/sequence/teaching.ts';
import { beginSequence } from '../../server/src/start/begin-sequence.ts';
import { choiceSteps, type SequenceChoices } from '../../server/src/start/sequence-choices.ts';
import { sequenceText } from '../../server/src/start/write-sequence.ts';
import { leanLessonProblems, openedBy } from '../../server/src/words/lean-lessons.ts';
import { createWordFinders } from '../../server/src/words/word-finders.ts';
import { packagePhonics } from '../support/package-phonics.ts';

const finders = createWordFinders(packagePhonics);
const first: SequenceChoices = {
  title: 'Willow Lane: grade 1',
  ...(Object.fromEntries(choiceSteps.map(({ key, answers }) => [key, answers[0]?.value])) as Omit<
    SequenceChoices,
    'title'
  >),
};

/** Every way to answer the questions on some subjects, with the first answer to all others. */
function waysToChoose(...keys: readonly string[]): readonly SequenceChoices[] {
  return choiceSteps
    .filter(({ key }) => keys.includes(key))
    .reduce<readonly SequenceChoices[]>(
      (ways, { key, answers }) =>
        ways.flatMap((way) => answers.map(({ value }) => ({ ...way, [key]: value }))),
      [first],
    );
}

function teachingBy(choices: SequenceChoices): Teaching {
  return teachingOf(readSequence(sequenceText(beginSequence(choices))), packagePhonics);
}

function warnings(teaching: Teaching): readonly string[] {
  return teaching.sequence.lessons.flatMap((lesson) => {
    const opened = openedBy(teaching.taughtBy(lesson), finders(teaching));
    return opened === undefined ? [] : leanLessonProblems(lesson, opened).map(({ message }) => message);
  });
}

describe('a sequence to begin with', () => {
  // Fewer words taught whole is the hardest case, and fewer lessons are the first of all: see below.
  const ways = waysToChoose('vowels', 'consonants', 'pace', 'blends', 'endings').map(
    (choices) => [Object.values(choices).slice(1).join(', '), choices] as const,
  );
  test.each(ways)('%s: has no problem, and each lesson opens ten words', (_, choices) => {
    const teaching = teachingBy(choices);
    expect(teaching.problems).toEqual([]);
    expect(warnings(teaching)).toEqual([]);
  });

  test.each(
    waysToChoose('words', 'lessons', 'pace').map(
      (choices) => [`${choices.words} words, ${choices.lessons} lessons, ${choices.pace}`, choices] as const,
    ),
  )('%s: as many as are asked for, and no problem', (_, choices) => {
    const teaching = teachingBy(choices);
    const { lessons } = teaching.sequence;
    expect(teaching.problems).toEqual([]);
    expect(lessons.length).toBe(
      Math.min(choices.lessons, teachingBy({ ...choices, lessons: 99 }).sequence.lessons.length),
    );
    expect(lessons[4]?.highFrequencyWords).toHaveLength(choices.words);
  });

  test('fewer lessons are the first of all, but for their targets', () => {
    const taught = (lessons: number) =>
      beginSequence({ ...first, lessons }).lessons.map(({ targets: _, ...rest }) => rest);
    expect(taught(12)).toEqual(taught(99).slice(0, 12));
  });

  test('a lesson that opens only a form opens ten words too', () => {
    const teaching = teachingBy(first);
    const { lessons } = teaching.sequence;
    const forms = lessons.filter(({ index, spellings }) => index > 0 && spellings.length === 0);
    expect(forms.length).toBeGreaterThan(3);
    for (const lesson of forms) {
      const before = lessons[lesson.index - 1];
      if (before === undefined) throw new Error('No lesson before.');
      const finder = finders(teaching);
      const earlier = new Set(finder.find(teaching.taughtBy(before), {}).words.map(({ word }) => word));
      const opened = finder
        .find(teaching.taughtBy(lesson), {})
        .words.filter(({ word }) => !earlier.has(word));
      expect([lesson.title, opened.length >= 10]).toEqual([lesson.title, true]);
    }
  });

  test('every answer says why', () => {
    for (const { question, answers } of choiceSteps) {
      expect(question).toMatch(/\?$/);
      for (const { because } of answers) expect(because).toMatch(/^[A-Zatcm].*\.$/);
    }
  });
});
