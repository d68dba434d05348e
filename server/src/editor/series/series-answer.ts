import { counted } from '../../review/wording.ts';
import type { Lesson } from '../../sequence/sequence.ts';
import { gapHeadings, gapMessage, spellingLabel } from '../../series/gap-wording.ts';
import { type Gap, gapKinds, type Row, type Series, type StoryInSeries } from '../../series/series.ts';
import { shortfall } from '../../series/standing.ts';
import type { SeriesAnswer, SeriesGaps, SeriesPlace, SeriesRow, SeriesStory } from './protocol.ts';

/** A series as the view takes it. The stories' paths are addresses; `uri` is the sequence's. */
export function seriesAnswer(
  uri: string,
  series: Series,
  sequences: SeriesAnswer['sequences'],
): SeriesAnswer {
  const { againWithin, unseenFor, metAtLeast } = series.sequence.limits;
  return {
    uri,
    title: series.sequence.title,
    sequences,
    limits: `By the limits of the sequence: a spelling again within ${counted(againWithin, 'story', 'stories')}, a high-frequency word unseen for fewer than ${unseenFor}, a word met at least ${metAtLeast} times.`,
    stories: series.stories.map(storyOf),
    spellings: series.spellings.map((row) => rowOf(row, spellingLabel(row.thing))),
    highFrequencyWords: series.highFrequencyWords.map((row) => rowOf(row, row.thing.word)),
    differentWords: series.words.length,
    gaps: gapKinds.flatMap((kind) => gapsOf(kind, series, uri)),
  };
}

function storyOf({ story, newWords, wordsSoFar }: StoryInSeries): SeriesStory {
  return {
    uri: story.path,
    title: story.title,
    lesson: story.lesson.name,
    lessonIndex: story.lesson.index,
    passes: story.passes,
    why: shortfall(story),
    readable: story.readable,
    target: story.target,
    words: story.counts.words,
    meanSentence: story.sentences.mean,
    longestSentence: story.sentences.longest,
    newWords: newWords.map(({ text }) => text),
    wordsSoFar,
    ...story.readability,
  };
}

function rowOf<Thing extends { readonly lesson: Lesson }>(
  { thing: { lesson }, uses, total }: Row<Thing>,
  label: string,
): SeriesRow {
  return { label, lesson: lesson.name, lessonIndex: lesson.index, total, uses };
}

function gapsOf(kind: Gap['kind'], { gaps }: Series, sequence: string): readonly SeriesGaps[] {
  const own = gaps.filter((gap) => gap.kind === kind);
  if (own.length === 0) return [];
  const shown = own.map((gap) => ({ message: gapMessage(gap), ...placeOf(gap, sequence) }));
  return [{ kind, heading: gapHeadings[kind], gaps: shown }];
}

/** Where a writer would look first. */
function placeOf(gap: Gap, sequence: string): { readonly uri: string; readonly place: SeriesPlace } {
  const lesson = ({ name }: Lesson) => ({
    uri: sequence,
    place: { kind: 'lesson', lesson: name } as const,
  });
  switch (gap.kind) {
    case 'target-missed':
      return { uri: gap.story.path, place: { kind: 'story' } };
    case 'lesson-without-story':
      return lesson(gap.lesson);
    case 'never-used':
    case 'not-practised':
      return lesson(gap.spelling.lesson);
    case 'not-again': {
      const place = { kind: 'spelling', spelling: spellingLabel(gap.spelling) } as const;
      return { uri: gap.after.path, place };
    }
    case 'never-met':
      return lesson(gap.word.lesson);
    case 'unseen':
      return { uri: gap.from.path, place: { kind: 'story' } };
    case 'seldom-met':
      return { uri: gap.word.firstStory.path, place: { kind: 'word', word: gap.word.word } };
  }
}
