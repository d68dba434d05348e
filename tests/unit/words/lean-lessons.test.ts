import { expect, test } from 'vitest';
import { readSequence } from '../../../server/src/sequence/read-sequence.ts';
import { type Teaching, teachingOf } from '../../../server/src/sequence/teaching.ts';
import { leanLessonProblems, openedBy } from '../../../server/src/words/lean-lessons.ts';
import { createWordFinders } from '../../../server/src/words/word-finders.ts';
import { packagePhonics } from '../../support/package-phonics.ts';
import { sampleTeaching } from '../../support/sample-lessons.ts';

const finders = createWordFinders(packagePhonics);

/** The lessons that open too few words, as the writer reads it. */
function lean(teaching: Teaching): readonly string[] {
  return teaching.sequence.lessons.flatMap((lesson) => {
    const opened = openedBy(teaching.taughtBy(lesson), finders(teaching));
    return opened === undefined ? [] : leanLessonProblems(lesson, opened).map(({ message }) => message);
  });
}

test('every lesson of the sample sequence opens enough words', () => {
  expect(lean(sampleTeaching)).toEqual([]);
});

test('a lesson with few new words names them; words taught whole count; lessons without a spelling are let alone', () => {
  const sequence = readSequence(`lessons:
  - name: "1"
    spellings: [m as in mud, a as in map]
    high-frequency words: [the]
  - name: "2"
    high-frequency words: [said]
  - name: Unit 3
    spellings: [t as in top, s as in sun, p as in pan, n as in nap]
  - name: Unit 4
    spellings: [z as in zip]
`);
  expect(lean(teachingOf(sequence, packagePhonics))).toEqual([
    'Lesson 1 opens only 2 new words that children can read: the, am. A story needs at least 10 to choose from. Teach another spelling or word with it, or move it to where more is taught.',
    'Lesson “Unit 4” opens only 2 new words that children can read: zap, stanza. A story needs at least 10 to choose from. Teach another spelling or word with it, or move it to where more is taught.',
  ]);
});

test('a spelling that no readable word holds is marked; one that only a form with an ending or a rare word holds is not', () => {
  const sequence = readSequence(`lessons:
  - name: "1"
    spellings: [m as in mud, a as in map, t as in top, s as in sun, p as in pan, n as in nap, i as in pin, d as in dot, g as in gap]
  - name: "2"
    spellings: [c as in cat, o as in mop, b as in bat, h as in hat, bb as in rabbit, pp as in puppet, se as in cheese]
`);
  expect(lean(teachingOf(sequence, packagePhonics))).toEqual([
    'No word that children can read by lesson 2 holds se as in cheese, so no story can practise it. Move it to where the other spellings of its words are taught.',
  ]);
});
