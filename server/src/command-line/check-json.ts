import type { PlacedReview } from '../review/review.ts';
import type { Missing } from '../sequence/taught.ts';
import { storyTitle } from '../story/story-title.ts';
import { type LineIndex, lineIndex } from '../text/line-index.ts';
import type { CheckedAll } from './check-sarif.ts';
import type { CheckedStory } from './check-story.ts';
import { jsonLines, jsonPart } from './json.ts';

/**
 * The report of `check --format json`, one story a line, then what is wrong in sequences, what could not be used and what was
 * left alone. Lines and columns count from 1, columns in UTF-16 units.
 */
export function checkReport({ stories, complaints, sequenceTroubles, leftAlone }: CheckedAll): string {
  return jsonLines(
    'stories',
    stories.map(storyReport),
    {},
    {
      sequenceProblems: sequenceTroubles.map(({ path, at, severity, message }) => ({
        path,
        ...at,
        severity,
        message,
      })),
      unusable: complaints.map(({ path, at, message }) => ({ path, ...at, message })),
      leftAlone,
    },
  );
}

function storyReport({ path, review }: CheckedStory): object {
  const { story, taught, counts, readable, decodable, target, passes, findings } = review;
  const place = lineIndex(story.text);
  return {
    path,
    title: storyTitle(story) ?? '',
    lesson: taught.lesson.name,
    counts,
    readable,
    decodable,
    target,
    passes,
    words: review.pages.flatMap((page) => wordReports(page, place)),
    sentences: review.pages.flatMap((page) => sentenceReports(page, place)),
    findings: findings.map(({ rule, severity, span, message }) => {
      const { line, column } = place(span.start);
      const { line: endLine, column: endColumn } = place(span.end);
      return { rule, severity, line, column, endLine, endColumn, message };
    }),
  };
}

function wordReports({ placed, reviewed }: PlacedReview, place: LineIndex): readonly object[] {
  return reviewed.words.map(({ word, kind, isNew, reading, missing }) => ({
    text: word.text,
    page: placed.number,
    ...place(placed.start + word.span.start),
    kind,
    new: isNew,
    parts: (reading?.parts ?? []).map(jsonPart),
    missing: missing.map(missingReport),
  }));
}

function missingReport(missing: Missing): object {
  const lesson = missing.lesson?.name ?? null;
  switch (missing.kind) {
    case 'spelling':
      return { spelling: missing.letters, asIn: missing.keyWord ?? null, lesson };
    case 'ending':
      return { form: 'ending', value: missing.ending, lesson };
    case 'blend':
      return { form: 'blend', value: missing.blend, letters: missing.letters, lesson };
    case 'syllables':
      return { form: 'syllables', value: missing.syllables, lesson };
  }
}

function sentenceReports({ placed }: PlacedReview, place: LineIndex): readonly object[] {
  return placed.page.sentences.map(({ span, words, text }) => ({
    line: place(placed.start + span.start).line,
    words: words.length,
    text,
  }));
}
