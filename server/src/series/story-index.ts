import type { Phonics } from '../phonics/phonics.ts';
import { reviewStory } from '../review/review-story.ts';
import type { Lesson } from '../sequence/sequence.ts';
import type { Taught } from '../sequence/taught.ts';
import type { Teaching } from '../sequence/teaching.ts';
import { readStory } from '../story/read-story.ts';
import type { Story } from '../story/story.ts';
import { lessonKeys } from './lesson-keys.ts';
import type { StoryCoverage } from './series.ts';
import { type Standing, standingOf } from './standing.ts';
import { coverageIn, storyCoverage } from './story-coverage.ts';

/**
 * Many stories, read and judged no more often than they must be: a text that is the same again is not read again, and a
 * story is not judged again while its lesson and the lessons before it teach the same.
 */
export interface StoryIndex {
  /** Takes in the text of a file; true when something is different now. Other files than stories are not kept. */
  put(path: string, text: string): boolean;
  /** Forgets a file; true when it was a story. */
  drop(path: string): boolean;
  /** The story at a path. */
  story(path: string): Story | undefined;
  /** All paths, in the order in which they were first put. */
  paths(): readonly string[];
  /** How a story stands by a sequence; nothing when it is not there or the sequence lacks its lesson. */
  standing(path: string, teaching: Teaching): Standing | undefined;
  /** What a story gives to the series along a sequence, under the same conditions. From then on it is kept up with the standing. */
  coverage(path: string, teaching: Teaching): StoryCoverage | undefined;
  /** How many stories have been judged so far, for tests. */
  readonly judged: number;
  readonly size: number;
}

/** Standings kept for a story: one for the sequence as it is, one as it was, one that is tried. */
const mostStandings = 3;

interface Entry {
  readonly story: Story;
  /** By the key of the lesson, the latest used last. */
  readonly standings: Map<string, Standing>;
  /** The latest. */
  coverage?: { readonly key: string; readonly teaching: Teaching; readonly given: StoryCoverage };
}

/** Makes an empty index. */
export function createStoryIndex(phonics: Phonics): StoryIndex {
  const entries = new Map<string, Entry>();
  const keys = new WeakMap<Teaching, ReadonlyMap<Lesson, string>>();
  let judged = 0;
  /** Coverage takes memory, so none is made before it is asked for. */
  let isCovering = false;

  const keyOf = (teaching: Teaching, lesson: Lesson): string => {
    const known = keys.get(teaching) ?? lessonKeys(teaching.sequence);
    keys.set(teaching, known);
    return known.get(lesson) ?? '';
  };

  const judge = (path: string, entry: Entry, taught: Taught, teaching: Teaching, key: string): Standing => {
    judged++;
    const review = reviewStory({ story: entry.story, taught, phonics });
    if (isCovering) entry.coverage = { key, teaching, given: storyCoverage(path, review, phonics.words) };
    return standingOf(review);
  };

  return {
    put: (path, text) => {
      const before = entries.get(path);
      if (before?.story.text === text) return false;
      const story = readStory(text, before?.story);
      if (!story.isStory) return entries.delete(path);
      entries.set(path, { story, standings: new Map() });
      return true;
    },
    drop: (path) => entries.delete(path),
    story: (path) => entries.get(path)?.story,
    paths: () => [...entries.keys()],
    standing: (path, teaching) => {
      const entry = entries.get(path);
      const taught = teaching.taughtAt(entry?.story.frontMatter.lesson?.value ?? '');
      if (entry === undefined || taught === undefined) return undefined;
      const key = keyOf(teaching, taught.lesson);
      const known = entry.standings.get(key);
      entry.standings.delete(key);
      const standing = known ?? judge(path, entry, taught, teaching, key);
      entry.standings.set(key, standing);
      if (entry.standings.size > mostStandings) {
        const [oldest = ''] = entry.standings.keys();
        entry.standings.delete(oldest);
      }
      return standing;
    },
    coverage: (path, teaching) => {
      const entry = entries.get(path);
      const taught = teaching.taughtAt(entry?.story.frontMatter.lesson?.value ?? '');
      if (entry === undefined || taught === undefined) return undefined;
      isCovering = true;
      const key = keyOf(teaching, taught.lesson);
      if (entry.coverage?.key !== key) judge(path, entry, taught, teaching, key);
      const { coverage } = entry;
      if (coverage === undefined || coverage.teaching === teaching) return coverage?.given;
      const given = coverageIn(teaching, coverage.given, coverage.teaching);
      entry.coverage = { key, teaching, given };
      return given;
    },
    get judged() {
      return judged;
    },
    get size() {
      return entries.size;
    },
  };
}
