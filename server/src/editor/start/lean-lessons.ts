import { lessonKeys } from '../../series/lesson-keys.ts';
import type { Problem } from '../../text/problem.ts';
import { leanLessonProblems, type Opened, openedBy } from '../../words/lean-lessons.ts';
import type { WordFinders } from '../../words/word-finders.ts';
import type { Cancel, Timers } from '../host.ts';
import type { SequenceFile } from '../sequence-files.ts';

/** Counts the new words of the lessons of open sequences while nobody types, a lesson a turn. */
export interface LeanLessons {
  /** The warnings of the lessons that are counted already; the others are planned, and `counted` tells when they are done. */
  problemsOf(file: SequenceFile): readonly Problem[];
  /** Drops what is known of a file. */
  forget(uri: string): void;
  /** How many lessons are remembered. */
  readonly size: number;
}

interface Surroundings {
  readonly finders: WordFinders;
  readonly timers: Timers;
  /** Called when the warnings of a file have become more than it was given. */
  readonly counted: (uri: string) => void;
}

/** Milliseconds without a new text before the counting begins: the first time it makes the list of all words, in one turn. */
const pause = 800;

/** Makes the counter of a server. */
export function createLeanLessons({ finders, timers, counted }: Surroundings): LeanLessons {
  /** For each file what each lesson opens, by the lesson's key: an edit counts again only what may have changed. */
  const known = new Map<string, ReadonlyMap<string, Opened | undefined>>();
  const planned = new Map<string, { readonly file: SequenceFile; readonly cancel: Cancel }>();

  const warnings = (file: SequenceFile): readonly Problem[] => {
    const counts = known.get(file.snapshot.uri);
    return [...lessonKeys(file.teaching.sequence)].flatMap(([lesson, key]) => {
      const opened = counts?.get(key);
      return opened === undefined ? [] : leanLessonProblems(lesson, opened);
    });
  };

  const count = (file: SequenceFile): void => {
    const { snapshot, teaching } = file;
    const { uri } = snapshot;
    const before = known.get(uri);
    const shown = warnings(file).length;
    const counts = new Map<string, Opened | undefined>();
    const lessons = [...lessonKeys(teaching.sequence)];
    const finder = finders(teaching);
    const step = (at: number): void => {
      if (planned.get(uri)?.file !== file) return;
      const next = lessons[at];
      if (next === undefined) {
        planned.delete(uri);
        known.set(uri, counts);
        if (warnings(file).length !== shown) counted(uri);
        return;
      }
      const [lesson, key] = next;
      counts.set(
        key,
        before?.has(key) === true ? before.get(key) : openedBy(teaching.taughtBy(lesson), finder),
      );
      timers.soon(() => step(at + 1));
    };
    step(0);
  };

  const cancel = (uri: string): void => {
    planned.get(uri)?.cancel();
    planned.delete(uri);
  };

  return {
    problemsOf: (file) => {
      const { uri } = file.snapshot;
      const counts = known.get(uri);
      const isCounted = [...lessonKeys(file.teaching.sequence).values()].every((key) => counts?.has(key));
      if (isCounted) cancel(uri);
      else if (planned.get(uri)?.file !== file) {
        cancel(uri);
        planned.set(uri, { file, cancel: timers.after(pause, () => count(file)) });
      }
      return warnings(file);
    },
    forget: (uri) => {
      cancel(uri);
      known.delete(uri);
    },
    get size() {
      return planned.size + [...known.values()].reduce((sum, counts) => sum + counts.size, 0);
    },
  };
}
