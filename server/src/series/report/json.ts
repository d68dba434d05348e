import { gapMessage, spellingLabel } from '../gap-wording.ts';
import type { Gap, Series, StoryCoverage } from '../series.ts';

/** The parts of the JSON report, each a list of plain objects. Shares are from 0 to 1 and exact. */
export interface CoverageJson {
  readonly title: string;
  readonly limits: Series['sequence']['limits'];
  readonly stories: readonly object[];
  readonly spellings: readonly object[];
  readonly highFrequencyWords: readonly object[];
  readonly words: readonly object[];
  readonly gaps: readonly object[];
}

/** The whole series as plain objects. `uses` of spellings and words are in the order of `stories`. */
export function coverageJson(series: Series): CoverageJson {
  const { sequence } = series;
  return {
    title: sequence.title,
    limits: sequence.limits,
    stories: series.stories.map(({ story, newWords, wordsSoFar }) => ({
      path: story.path,
      title: story.title,
      lesson: story.lesson.name,
      passes: story.passes,
      failing: story.failing.map(({ rule, count }) => ({ rule, count })),
      counts: story.counts,
      readable: story.readable,
      decodable: story.decodable,
      target: story.target,
      pages: story.pages,
      sentences: story.sentences,
      readability: story.readability,
      differentWords: story.words.length,
      differentWordsSoFar: wordsSoFar,
      newWords: newWords.map(({ text }) => text),
    })),
    spellings: series.spellings.map(({ thing, uses, total, stories }) => ({
      spelling: thing.line.letters,
      asIn: thing.line.keyWord,
      lesson: thing.lesson.name,
      total,
      stories,
      uses,
    })),
    highFrequencyWords: series.highFrequencyWords.map(({ thing, uses, total, stories }) => ({
      word: thing.word,
      lesson: thing.lesson.name,
      total,
      stories,
      uses,
    })),
    words: series.words.map(({ word, first, firstStory, count, stories }) => ({
      word,
      kind: first.kind,
      count,
      stories,
      first: firstStory.path,
      lesson: firstStory.lesson.name,
      parts: first.reading?.parts.map(({ letters }) => letters) ?? [],
    })),
    gaps: series.gaps.map((gap) => ({ gap: gap.kind, ...gapSubject(gap), message: gapMessage(gap) })),
  };
}

/** What a gap is about: a spelling or word with its lesson, or a story. */
function gapSubject(gap: Gap): object {
  switch (gap.kind) {
    case 'lesson-without-story':
      return { lesson: gap.lesson.name };
    case 'never-used':
    case 'not-practised':
      return { spelling: spellingLabel(gap.spelling), lesson: gap.spelling.lesson.name };
    case 'not-again':
      return {
        spelling: spellingLabel(gap.spelling),
        lesson: gap.spelling.lesson.name,
        after: pathOf(gap.after),
      };
    case 'never-met':
      return { word: gap.word.word, lesson: gap.word.lesson.name };
    case 'unseen':
      return {
        word: gap.word.word,
        lesson: gap.word.lesson.name,
        stories: gap.stories,
        from: pathOf(gap.from),
        to: pathOf(gap.to),
      };
    case 'seldom-met':
      return { word: gap.word.word, count: gap.word.count, first: pathOf(gap.word.firstStory) };
    case 'target-missed':
      return { story: pathOf(gap.story), lesson: gap.story.lesson.name };
  }
}

function pathOf({ path }: StoryCoverage): string {
  return path;
}
