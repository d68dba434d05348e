import type { Accent } from '../phonics/sound-classes.ts';
import { foldedWord } from '../text/folded-word.ts';
import type { Problem } from '../text/problem.ts';
import type { Span } from '../text/span.ts';
import { isNothing } from '../yaml/yaml-node.ts';
import { type LessonRead, namelessLesson, readLesson } from './read-lesson.ts';
import { defaultLimits, readLimits } from './read-limits.ts';
import { defaultTargets, readTargets } from './read-targets.ts';
import type { AuthorPronunciation, Dimension, Lesson, Placed, Sequence } from './sequence.ts';
import { type Field, FieldReader } from './yaml-fields.ts';
import { readYaml } from './yaml-source.ts';

/** The longest sequence file that is read, in UTF-16 code units; a year's sequence has some 20,000. */
export const longestSequence = 500_000;

/**
 * Reads a scope and sequence from the text of its file. Never fails: what is wrong is in `problems`, at its place and in
 * the order of the file, and everything else is read. Key words are not yet checked against their sounds: see `teachingOf`.
 */
export function readSequence(text: string): Sequence {
  if (text.length > longestSequence) {
    const line = firstLine(text);
    const message = `This file is longer than ${longestSequence.toLocaleString('en-US')} characters and is not read. A sequence of a whole year has about 20,000.`;
    return { ...emptySequence, problems: [{ message, span: line, severity: 'error' }] };
  }
  const source = readYaml(text);
  const fields = new FieldReader();
  if (source.contents === null || isNothing(source.contents)) {
    const message =
      'This sequence is empty. It needs lessons, each with a name and the spellings it teaches.';
    const problems: Problem[] =
      source.problems.length > 0
        ? [...source.problems]
        : [{ message, span: firstLine(text), severity: 'error' }];
    return { ...emptySequence, problems };
  }
  const given = fields.fieldsOf(source.contents, 'a sequence', sequenceKeys);
  if (given === undefined) {
    return { ...emptySequence, problems: firstProblems([...source.problems, ...fields.problems]) };
  }
  const lessonsRead = readLessons(given.get('lessons'), firstLine(text), fields);
  const lessons = lessonsRead.map(({ lesson }) => lesson);
  reportRepetitions(lessons, fields);
  const sequence = {
    title: fields.textOf(given.get('title'))?.value ?? '',
    targets: { ...defaultTargets, ...readTargets(given.get('targets')?.value ?? null, fields) },
    lessons,
    accent: readAccent(given.get('cot and caught'), fields),
    mentions: new Set<Dimension>(lessonsRead.flatMap(({ mentions }) => [...mentions])),
    limits: readLimits(given.get('series')?.value ?? null, fields),
    pronunciations: readPronunciations(given.get('pronunciations'), fields),
  };
  const own = fields.problems.filter(
    // A line that could not be read must not be blamed a second time for what it then lacks.
    ({ span }) => !source.leftOut.some((line) => span.start >= line.start && span.start <= line.end),
  );
  return { ...sequence, problems: firstProblems([...source.problems, ...own]) };
}

/** The keys of a sequence file. */
export const sequenceKeys = [
  'title',
  'targets',
  'lessons',
  'pronunciations',
  'cot and caught',
  'series',
] as const;

const emptySequence: Sequence = {
  title: '',
  targets: defaultTargets,
  lessons: [],
  accent: 'merged',
  mentions: new Set(),
  limits: defaultLimits,
  pronunciations: [],
  problems: [],
};

/** Problems shown at most; a file with more of them is another kind of file. */
const mostProblems = 200;

function firstProblems(problems: readonly Problem[]): Problem[] {
  const ordered = [...problems].sort((left, right) => left.span.start - right.span.start);
  const shown = ordered.slice(0, mostProblems);
  const next = ordered[mostProblems];
  if (next !== undefined) {
    const message = `${ordered.length - mostProblems} more problems follow, not shown. Mend the first ones and the rest will appear.`;
    shown.push({ message, span: next.span, severity: 'error' });
  }
  return shown;
}

function readLessons(field: Field | undefined, otherwise: Span, fields: FieldReader): LessonRead[] {
  if (field === undefined) {
    fields.report(
      'This sequence has no lessons. Add “lessons:” and under it an item for each, as in - name: "1".',
      otherwise,
    );
    return [];
  }
  const items = fields.itemsOf(field, '- name: "1"');
  if (items?.length === 0) {
    fields.report('This sequence has no lessons. Add an item for each, as in - name: "1".', field.key.span);
  }
  const lessons: LessonRead[] = [];
  for (const item of items ?? []) {
    const lesson = readLesson(item, lessons.length, fields);
    if (lesson !== undefined) {
      lessons.push(lesson);
    }
  }
  return lessons;
}

function readAccent(field: Field | undefined, fields: FieldReader): Accent {
  const given = field && fields.textOf(field);
  if (given === undefined || given.value === 'merged') return 'merged';
  if (given.value === 'apart') return 'apart';
  fields.report(
    '“cot and caught” is merged (one vowel, as without this line) or apart (two vowels).',
    given.span,
  );
  return 'merged';
}

function readPronunciations(field: Field | undefined, fields: FieldReader): AuthorPronunciation[] {
  if (field === undefined || isNothing(field.value)) {
    return [];
  }
  const pronunciations: AuthorPronunciation[] = [];
  for (const [, entry] of fields.fieldsOf(field.value, 'the list of pronunciations') ?? []) {
    const graphemes = fields.textOf(entry);
    if (graphemes !== undefined) {
      pronunciations.push({ word: entry.key, graphemes });
    } else if (isNothing(entry.value)) {
      fields.report(
        `“${entry.key.value}” has no pronunciation; write its graphemes behind the colon.`,
        entry.key.span,
      );
    }
  }
  return pronunciations;
}

/** Names that two lessons bear, things taught a second time, and a syllable count that takes back an earlier one. */
function reportRepetitions(lessons: readonly Lesson[], fields: FieldReader): void {
  const names = new Map<string, Lesson>();
  const taught = new Map<string, Lesson>();
  let syllables: { readonly count: number; readonly lesson: Lesson } | undefined;
  const once = (kind: string, item: Placed<string>, shown: string, lesson: Lesson): void => {
    const key = `${kind} ${item.value}`;
    const earlier = taught.get(key);
    if (earlier === undefined) {
      taught.set(key, lesson);
    } else {
      const where = earlier === lesson ? 'earlier in this lesson' : `in lesson ${earlier.name}`;
      fields.report(
        `“${shown}” is taught already ${where}. What is taught stays taught.`,
        item.span,
        'warning',
      );
    }
  };
  for (const lesson of lessons) {
    if (names.has(lesson.name) && lesson.name !== namelessLesson) {
      fields.report(
        `Another lesson is named “${lesson.name}” already. A story with this name gets the first of the two.`,
        lesson.nameSpan,
      );
    } else {
      names.set(lesson.name, lesson);
    }
    for (const { value, span } of lesson.spellings) {
      const shown = `${value.letters} as in ${value.keyWord}`;
      once('spelling', { value: foldedWord(shown), span }, shown, lesson);
    }
    for (const { value, span } of lesson.highFrequencyWords) {
      once('word', { value: foldedWord(value), span }, value, lesson);
    }
    for (const [kind, items] of [
      ['ending', lesson.endings],
      ['blend', lesson.blends],
      ['mark', lesson.punctuation],
    ] as const) {
      for (const item of items) {
        once(kind, item, item.value, lesson);
      }
    }
    if (lesson.syllables !== undefined) {
      if (syllables !== undefined && lesson.syllables.value < syllables.count) {
        const message = `Words of ${syllables.count} syllables are open since lesson ${syllables.lesson.name}. What is taught stays taught.`;
        fields.report(message, lesson.syllables.span, 'warning');
      } else {
        syllables = { count: lesson.syllables.value, lesson };
      }
    }
  }
}

function firstLine(text: string): Span {
  const start = text.startsWith('\ufeff') ? 1 : 0;
  const end = text.slice(0, 1000).search(/[\r\n]/);
  return { start, end: Math.max(start, end === -1 ? Math.min(text.length, 1000) : end) };
}
