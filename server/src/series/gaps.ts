import type { TaughtSpelling } from '../sequence/taught.ts';
import { type Gap, gapKinds, type HighFrequencyWord, type Row, type Series } from './series.ts';

/** What the year lacks by the limits of its sequence, in the order of `gapKinds`, each kind in the order of the year. */
export function gapsOf(series: Omit<Series, 'gaps'>): readonly Gap[] {
  const { stories, spellings, highFrequencyWords, words } = series;
  const { againWithin, unseenFor, metAtLeast } = series.sequence.limits;
  if (stories.length === 0) return [];
  const gaps: Gap[] = [
    ...stories.flatMap(({ story }): Gap[] => (story.passes ? [] : [{ kind: 'target-missed', story }])),
    ...lessonsWithoutStory(series),
    ...spellings.flatMap((row) => spellingGaps(row, series, againWithin)),
    ...highFrequencyWords.flatMap((row) => wordGaps(row, series, unseenFor)),
    ...words.flatMap((word): Gap[] =>
      // A name is there for its bearer, not to be learned; and of a single story nobody can say yet.
      stories.length > 1 && word.count < metAtLeast && !word.first.isName
        ? [{ kind: 'seldom-met', word }]
        : [],
    ),
  ];
  return gaps.sort((left, right) => gapKinds.indexOf(left.kind) - gapKinds.indexOf(right.kind));
}

/** Lessons that teach something to practise, up to the last one that has a story: what comes later is not written yet. */
function lessonsWithoutStory({ sequence, stories }: Omit<Series, 'gaps'>): readonly Gap[] {
  const written = new Set(stories.map(({ story }) => story.lesson));
  const last = lastLesson(stories);
  return sequence.lessons.flatMap((lesson): Gap[] => {
    const teaches = lesson.spellings.length > 0 || lesson.highFrequencyWords.length > 0;
    return teaches && lesson.index < last && !written.has(lesson)
      ? [{ kind: 'lesson-without-story', lesson }]
      : [];
  });
}

function spellingGaps(
  { thing: spelling, uses, total }: Row<TaughtSpelling>,
  { stories }: Omit<Series, 'gaps'>,
  againWithin: number,
): readonly Gap[] {
  if (spelling.lesson.index > lastLesson(stories)) return [];
  if (total === 0) return [{ kind: 'never-used', spelling }];
  const own = stories.flatMap(({ story }, index) => (story.lesson === spelling.lesson ? [index] : []));
  const last = own.at(-1);
  const after = last === undefined ? undefined : stories[last]?.story;
  if (last === undefined || after === undefined) return [];
  const gaps: Gap[] = [];
  if (own.every((index) => uses[index] === 0)) {
    gaps.push({ kind: 'not-practised', spelling, stories: own.length });
  }
  const next = uses.slice(last + 1, last + 1 + againWithin);
  // With fewer stories to come than the limit nobody can say yet.
  if (next.length === againWithin && next.every((count) => count === 0)) {
    gaps.push({ kind: 'not-again', spelling, after, stories: againWithin });
  }
  return gaps;
}

function wordGaps(
  { thing: word, uses, total }: Row<HighFrequencyWord>,
  { stories }: Omit<Series, 'gaps'>,
  unseenFor: number,
): readonly Gap[] {
  if (word.lesson.index > lastLesson(stories)) return [];
  if (total === 0) return [{ kind: 'never-met', word }];
  let longest = { from: 0, length: 0 };
  let length = 0;
  stories.forEach(({ story }, index) => {
    length = story.lesson.index < word.lesson.index || (uses[index] ?? 0) > 0 ? 0 : length + 1;
    if (length > longest.length) longest = { from: index - length + 1, length };
  });
  const from = stories[longest.from]?.story;
  const to = stories[longest.from + longest.length - 1]?.story;
  if (longest.length < unseenFor || from === undefined || to === undefined) return [];
  return [{ kind: 'unseen', word, stories: longest.length, from, to }];
}

function lastLesson(stories: Series['stories']): number {
  return stories.at(-1)?.story.lesson.index ?? -1;
}
