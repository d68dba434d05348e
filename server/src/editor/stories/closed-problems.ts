import type { Connection, Diagnostic } from 'vscode-languageserver';
import type { Phonics } from '../../phonics/phonics.ts';
import { textHash } from '../../text/text-hash.ts';
import { draftOf, storyOutcome } from '../analyse-document.ts';
import { findingsOf } from '../analysis.ts';
import { diagnosticOf } from '../diagnostics.ts';
import { snapshotOf } from '../documents.ts';
import { homeOf, type Workspace } from '../workspace.ts';
import type { WorkspaceStories } from './workspace-stories.ts';

/** Puts what is found in stories that are not open into the client's list of problems, while it is asked to. */
export interface ClosedProblems {
  /** Begins or stops; stopping takes all away at once. */
  show(isShown: boolean): void;
  /** Brings the list up to date, where it is shown. */
  refresh(): Promise<void>;
  /** A story was opened, so that its problems come the usual way from now on. */
  opened(uri: string): void;
  readonly size: number;
}

interface Surroundings {
  readonly connection: Connection;
  readonly phonics: Phonics;
  readonly stories: WorkspaceStories;
  readonly workspace: () => Workspace;
  readonly isOpen: (uri: string) => boolean;
  readonly largestFile: () => number;
  readonly pause: () => Promise<void>;
}

/** Shows nothing at first. */
export function createClosedProblems(surroundings: Surroundings): ClosedProblems {
  const { connection, phonics, stories, workspace, isOpen, largestFile, pause } = surroundings;
  /** A hash of what was sent, by address. */
  const sent = new Map<string, string>();
  let isShown = false;

  const send = (uri: string, diagnostics: Diagnostic[]): void => {
    const hash = diagnostics.length === 0 ? undefined : textHash(JSON.stringify(diagnostics));
    if (sent.get(uri) === hash) return;
    if (hash === undefined) sent.delete(uri);
    else sent.set(uri, hash);
    void connection.sendDiagnostics({ uri, diagnostics });
  };

  const diagnosticsOf = async (uri: string): Promise<Diagnostic[]> => {
    const story = stories.index.story(uri);
    if (story === undefined) return [];
    const snapshot = snapshotOf(uri, 'markdown', 0, story.text);
    const known = { kind: 'not-reviewed', reason: 'no-sequence', message: '', story, findings: [] } as const;
    const drafted = draftOf(snapshot, largestFile(), homeOf(uri, workspace()), known);
    const outcome =
      'story' in drafted ? storyOutcome(drafted, await stories.sequenceOf(uri, story), { phonics }) : drafted;
    return findingsOf(outcome.content).map((finding) => diagnosticOf(snapshot, finding));
  };

  return {
    show: (wanted) => {
      isShown = wanted;
      if (!wanted) for (const uri of [...sent.keys()]) send(uri, []);
    },
    refresh: async () => {
      if (!isShown) return;
      let done = 0;
      for (const uri of stories.index.paths()) {
        const diagnostics = isOpen(uri) ? [] : await diagnosticsOf(uri);
        // It may have been opened, or all be taken away, in the meantime.
        if (!isShown) return;
        if (!isOpen(uri)) send(uri, diagnostics);
        if (++done % 10 === 0) await pause();
      }
      for (const uri of [...sent.keys()]) if (stories.index.story(uri) === undefined) send(uri, []);
    },
    opened: (uri) => send(uri, []),
    get size() {
      return sent.size;
    },
  };
}
