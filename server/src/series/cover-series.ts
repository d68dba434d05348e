import type { Teaching } from '../sequence/teaching.ts';
import { gapsOf } from './gaps.ts';
import type { HighFrequencyWord, Row, Series, StoryCoverage, StoryInSeries, WordInSeries } from './series.ts';
import { highFrequencyKey } from './story-coverage.ts';

/**
 * Puts stories of one sequence together: by the order of their lessons, those of one lesson in the order in which they are
 * given. Every story was reviewed with `teaching`.
 */
export function coverSeries(given: readonly StoryCoverage[], teaching: Teaching): Series {
  const ordered = [...given].sort((left, right) => left.lesson.index - right.lesson.index);
  const { stories, words } = wordsThrough(ordered);
  const spellings = teaching.spellings
    .filter((spelling) => teaching.taughtBy(spelling.lesson).newSpellings.includes(spelling))
    .map((spelling) => rowOf(spelling, ordered, (story) => story.spellings.get(spelling)));
  const highFrequencyWords = highFrequencyWordsOf(teaching).map((word) =>
    rowOf(word, ordered, (story) => story.highFrequencyWords.get(word.key)),
  );
  const covered = { sequence: teaching.sequence, stories, spellings, highFrequencyWords, words };
  return { ...covered, gaps: gapsOf(covered) };
}

/** All high-frequency words of a sequence, in the order of its lessons; one that two lessons list belongs to the first. */
export function highFrequencyWordsOf(teaching: Teaching): readonly HighFrequencyWord[] {
  const words = new Map<string, HighFrequencyWord>();
  for (const lesson of teaching.sequence.lessons) {
    for (const { value } of lesson.highFrequencyWords) {
      const key = highFrequencyKey(value);
      if (!words.has(key)) words.set(key, { word: value, key, lesson });
    }
  }
  return [...words.values()];
}

function rowOf<Thing>(
  thing: Thing,
  stories: readonly StoryCoverage[],
  usesIn: (story: StoryCoverage) => number | undefined,
): Row<Thing> {
  const uses = stories.map((story) => usesIn(story) ?? 0);
  return {
    thing,
    uses,
    total: uses.reduce((sum, count) => sum + count, 0),
    stories: uses.filter((count) => count > 0).length,
  };
}

function wordsThrough(ordered: readonly StoryCoverage[]): {
  readonly stories: readonly StoryInSeries[];
  readonly words: readonly WordInSeries[];
} {
  const words = new Map<string, { -readonly [Key in keyof WordInSeries]: WordInSeries[Key] }>();
  const stories = ordered.map((story): StoryInSeries => {
    const newWords = story.words.filter((word) => {
      const known = words.get(word.word);
      if (known === undefined) {
        words.set(word.word, {
          word: word.word,
          first: word,
          firstStory: story,
          count: word.count,
          stories: 1,
        });
        return true;
      }
      known.count += word.count;
      known.stories++;
      return false;
    });
    return { story, newWords, wordsSoFar: words.size };
  });
  return { stories, words: [...words.values()] };
}
