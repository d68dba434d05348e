import type { Phonics } from '../phonics/phonics.ts';
import { createWordMemory } from '../review/word-memory.ts';
import type { Problem } from '../text/problem.ts';
import { type Draft, draftOf, isYaml, sequenceOutcome, storyOutcome } from './analyse-document.ts';
import type { Analysis, Outcome } from './analysis.ts';
import type { Snapshot } from './documents.ts';
import type { MaybeLater, SequenceFile, SequenceFiles } from './sequence-files.ts';
import { type Home, homeOf, type Workspace } from './workspace.ts';

/** Finds out all there is to know of open documents, each state of affairs once. */
export interface Analyst {
  /**
   * The analysis of a document as it is when this resolves; nothing when it is not open. Askers share one run, and a run
   * that a change overtakes is dropped unseen.
   */
  analyse(uri: string): Promise<Analysis | undefined>;
  /** The last analysis, current or not. */
  last(uri: string): Analysis | undefined;
  /** Drops what is known of a document. */
  forget(uri: string): void;
  /** How many analyses have been made so far, of stories and sequences. */
  readonly runs: number;
  /** How many documents are remembered. */
  readonly size: number;
}

interface Surroundings {
  readonly phonics: Phonics;
  readonly sequences: SequenceFiles;
  /** What is wrong in a sequence beside the problems of its lines, as far as it is known. */
  readonly furtherProblems: (file: SequenceFile) => readonly Problem[];
  /** The open document at an address as the client writes it. */
  readonly open: (uri: string) => Snapshot | undefined;
  readonly workspace: () => Workspace;
  /** The setting, in kilobytes. */
  readonly largestFile: () => number;
}

interface Remembered {
  readonly analysis: Analysis;
  readonly generation: number;
  readonly largestFile: number;
  /** The sequence the analysis rests on. */
  readonly sequenceFile: SequenceFile | undefined;
  /** Where there is none: a file whose name is nearly one. */
  readonly mistakenName: string | undefined;
}

/** Makes the analyst of a server. */
export function createAnalyst(surroundings: Surroundings): Analyst {
  const { phonics, sequences, furtherProblems, open, workspace, largestFile } = surroundings;
  const remembered = new Map<string, Remembered>();
  const memory = createWordMemory();
  let runs = 0;

  const sequenceFor = (
    drafted: Draft | Outcome,
    home: Home | undefined,
  ): MaybeLater<SequenceFile | undefined> => {
    if (!('story' in drafted) || home === undefined) return undefined;
    return drafted.named === undefined ? sequences.nearest(home) : sequences.at(drafted.named, home.root);
  };

  const analyse = async (uri: string): Promise<Analysis | undefined> => {
    for (;;) {
      const snapshot = open(uri);
      if (snapshot === undefined) return undefined;
      const before = remembered.get(uri);
      const { generation } = sequences;
      const largest = largestFile();
      const isSameText = before?.analysis.snapshot === snapshot && before.largestFile === largest;
      if (isSameText && before.generation === generation) return before.analysis;

      if (isSameText && isYaml(snapshot)) {
        remembered.set(uri, { ...before, generation });
        return before.analysis;
      }
      const home = homeOf(uri, workspace());
      const content = before?.analysis.content;
      const drafted = isYaml(snapshot)
        ? sequenceOutcome(snapshot, largest, sequences.of, furtherProblems)
        : draftOf(snapshot, largest, home, content);
      const later = sequenceFor(drafted, home);
      const sequenceFile = later instanceof Promise ? await later : later;
      const isNowhere = 'story' in drafted && drafted.named === undefined && sequenceFile === undefined;
      const mistakenName = isNowhere && home !== undefined ? await sequences.mistakenName(home) : undefined;
      const isOvertaken = open(uri) !== snapshot || sequences.generation !== generation;
      const hasCompany = remembered.get(uri) !== before;
      if (isOvertaken || hasCompany) continue;

      const isSameSequence = before?.sequenceFile === sequenceFile && before?.mistakenName === mistakenName;
      if (isSameText && isSameSequence && 'story' in drafted && before.analysis.named === drafted.named) {
        remembered.set(uri, { ...before, generation });
        return before.analysis;
      }
      const outcome =
        'story' in drafted
          ? storyOutcome(drafted, sequenceFile, { phonics, memory, before: content, mistakenName })
          : drafted;
      const analysis = { ...outcome, id: ++runs, snapshot };
      remembered.set(uri, { analysis, generation, largestFile: largest, sequenceFile, mistakenName });
      return analysis;
    }
  };

  return {
    analyse,
    last: (uri) => remembered.get(uri)?.analysis,
    forget: (uri) => {
      remembered.delete(uri);
    },
    get runs() {
      return runs;
    },
    get size() {
      return remembered.size;
    },
  };
}
