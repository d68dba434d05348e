import { sequenceFileName } from '../sequence/sequence-file-name.ts';
import { fileName } from './uri.ts';

/** Which open stories name which sequence files. Addresses of sequences are canonical. */
export interface NamedSequences {
  /** Notes what a story names now, or that it names nothing; gives the files that it began or ceased to name. */
  note(story: string, sequence: string | undefined): readonly string[];
  /** True for a file that is a sequence by its name, or because a story names it. */
  isSequence(uri: string): boolean;
  /** All files that are named. */
  all(): ReadonlySet<string>;
  readonly size: number;
}

/** Begins with no story. */
export function createNamedSequences(): NamedSequences {
  const named = new Map<string, string>();
  return {
    note: (story, sequence) => {
      const before = named.get(story);
      if (before === sequence) return [];
      if (sequence === undefined) named.delete(story);
      else named.set(story, sequence);
      return [before, sequence].filter((uri) => uri !== undefined);
    },
    isSequence: (uri) => fileName(uri) === sequenceFileName || [...named.values()].includes(uri),
    all: () => new Set(named.values()),
    get size() {
      return named.size;
    },
  };
}
