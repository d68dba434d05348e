import type { Connection, DocumentDiagnosticReport } from 'vscode-languageserver';
import type { TextDocumentContentChangeEvent } from 'vscode-languageserver-textdocument';
import type { WordFinders } from '../words/word-finders.ts';
import type { Analysis } from './analysis.ts';
import { createAnalyst } from './analyst.ts';
import type { ClientTraits } from './client-traits.ts';
import { createClosedSequences } from './closed-sequences.ts';
import type { Snapshot } from './documents.ts';
import { createFollowUp } from './follow-up.ts';
import { createGate } from './gate.ts';
import type { Host } from './host.ts';
import { createNamedSequences } from './named-sequences.ts';
import { createOpenDocuments } from './open-documents.ts';
import type { Settings } from './protocol.ts';
import type { Runner } from './runner.ts';
import { createSequenceFiles, type SequenceFile } from './sequence-files.ts';
import { createShowing } from './showing.ts';
import { createLeanLessons } from './start/lean-lessons.ts';
import { type BackgroundIndex, createBackgroundIndex } from './stories/background-index.ts';
import { createTyping } from './typing.ts';
import { canonicalUri, isYamlName } from './uri.ts';
import { homeOf, workspaceOf } from './workspace.ts';
import { createWorkspaceFiles } from './workspace-files.ts';

/** All that happens between `initialize` and `shutdown`, told in events; answers are for the moment they are given. */
export interface Session {
  opened(uri: string, languageId: string, version: number, text: string): void;
  edited(uri: string, changes: readonly TextDocumentContentChangeEvent[], version: number): void;
  saved(uri: string): void;
  closed(uri: string): void;
  /** Files have changed on disk. */
  filesChanged(uris: readonly string[]): void;
  /** These are the workspace folders now. */
  foldersAre(uris: readonly string[]): void;
  settingsAre(settings: Settings): void;
  readonly settings: Settings;
  readonly traits: ClientTraits;
  /**
   * What is known of a document once the changes that have arrived are taken in; nothing when it is not open or not ours.
   */
  analysis(uri: string): Promise<Analysis | undefined>;
  /** The sequence that counts for a file of any kind: its own, the nearest, or that of the first workspace folder. */
  sequenceFor(uri: string): Promise<SequenceFile | undefined>;
  /** True for the latest snapshot of a document the client has open. */
  isOpen(snapshot: Snapshot): boolean;
  /** The diagnostics of an analysis for a client that pulls. */
  report(analysis: Analysis, previousResultId: string | undefined): DocumentDiagnosticReport;
  /** All stories of the workspace; absent where no files can be listed. */
  readonly stories: BackgroundIndex | undefined;
  /** How many analyses have been made. */
  readonly runs: number;
  /** How many things all caches together remember. */
  readonly remembered: number;
}

/** Begins a session with a client. */
export function startSession(
  connection: Connection,
  host: Host,
  traits: ClientTraits,
  startSettings: Settings,
  runner: Runner,
  finders: WordFinders,
): Session {
  const { phonics, timers } = host;
  const documents = createOpenDocuments();
  const gate = createGate(timers);
  const names = createNamedSequences();
  let workspace = workspaceOf(traits.folders);
  let settings = startSettings;

  const { read, list } = createWorkspaceFiles(connection, host, traits, runner);
  const sequences = createSequenceFiles({ phonics, open: documents.at, read });
  const closedSequences = createClosedSequences(connection, (uri) => documents.at(uri) !== undefined);
  const leanLessons = createLeanLessons({
    finders,
    timers,
    counted: (uri) => {
      analyst.forget(uri);
      lookAgain([uri]);
    },
  });
  const analyst = createAnalyst({
    phonics,
    sequences,
    furtherProblems: leanLessons.problemsOf,
    open: documents.get,
    workspace: () => workspace,
    largestFile: () => settings.largestFile,
  });
  const stories =
    host.listFiles === undefined && !traits.listsFiles
      ? undefined
      : createBackgroundIndex({
          connection,
          timers,
          phonics,
          sequences,
          open: documents.at,
          read,
          list,
          workspace: () => workspace,
          largestFile: () => settings.largestFile,
          failed: runner.report,
        });
  const typing = createTyping(timers, (uri) => {
    if (showing.holdsBack(uri)) lookAgain([uri]);
  });
  const showing = createShowing({
    connection,
    pulls: traits.pullsDiagnostics,
    typing,
    timers,
    isCurrent: ({ snapshot }) => documents.get(snapshot.uri) === snapshot,
    isBusy: () => followUp.isBusy,
    failed: runner.report,
  });
  const followUp = createFollowUp(gate, {
    look: async (uri) => {
      const analysis = await analysed(uri);
      if (analysis !== undefined) showing.show(analysis);
    },
    failed: (uri, fault) => runner.report(`the review of ${uri}`, fault),
    rested: showing.rested,
  });

  const analysed = async (uri: string): Promise<Analysis | undefined> => {
    if (documents.get(uri) === undefined || !isOurs(uri)) {
      showing.clear(uri);
      return undefined;
    }
    const analysis = await analyst.analyse(uri);
    if (analysis !== undefined) {
      noteNamed(uri, analysis.named);
      // What is wrong in the sequence is found and told after what is wrong in the story.
      timers.soon(() => {
        if (documents.get(uri) === analysis.snapshot)
          closedSequences.follows(uri, sequenceFollowed(analysis));
      });
    }
    return analysis;
  };

  /** Every document may be a story; of the YAML files only sequences are ours. */
  const isOurs = (uri: string): boolean => {
    const isYaml = isYamlName(uri) || documents.get(uri)?.document.languageId === 'yaml';
    return !isYaml || names.isSequence(canonicalUri(uri));
  };

  /** An open YAML file becomes a sequence, or stops being one, when a story names it or stops naming it. */
  const noteNamed = (uri: string, named: string | undefined): void => {
    const concerned = names.note(uri, named).flatMap((canonical) => documents.at(canonical)?.uri ?? []);
    if (concerned.length > 0) lookAgain(concerned);
  };

  /** After something has changed that documents rest on beside their own text. */
  const lookAgain = (uris: readonly string[]): void => {
    followUp.add(uris);
    showing.askAgain();
  };

  /** After the text of a sequence has changed, in the editor or on disk. */
  const sequenceChanged = (uri: string): void => {
    const canonical = canonicalUri(uri);
    if (!names.isSequence(canonical)) return;
    sequences.changed(canonical);
    lookAgain(documents.uris());
  };

  return {
    opened: (uri, languageId, version, text) => {
      gate.arrived();
      documents.open(uri, languageId, version, text);
      closedSequences.opened(canonicalUri(uri));
      if (!traits.registersWatchers) sequences.allChanged();
      stories?.opened(uri);
      stories?.changed([uri], 'files');
      sequenceChanged(uri);
      followUp.add([uri]);
    },
    edited: (uri, changes, version) => {
      gate.arrived();
      const snapshot = documents.edit(uri, changes, version);
      if (snapshot === undefined) return;
      typing.typed(uri, snapshot.touched);
      stories?.changed([uri], 'typing');
      sequenceChanged(uri);
      followUp.add([uri]);
    },
    saved: (uri) => {
      stories?.changed([uri], 'files');
      sequenceChanged(uri);
    },
    closed: (uri) => {
      if (!documents.close(uri)) return;
      followUp.drop(uri);
      typing.forget(uri);
      analyst.forget(uri);
      leanLessons.forget(uri);
      noteNamed(uri, undefined);
      closedSequences.follows(uri, undefined);
      showing.clear(uri);
      stories?.changed([uri], 'files');
      sequenceChanged(uri);
      const homes = documents.uris().flatMap((open) => homeOf(open, workspace) ?? []);
      sequences.retain(homes, names.all());
    },
    filesChanged: (uris) => {
      const changed = uris.filter((uri) => isYamlName(uri));
      for (const uri of changed) sequences.changed(canonicalUri(uri));
      if (changed.length > 0) lookAgain(documents.uris());
      stories?.changed(uris, 'files');
    },
    foldersAre: (uris) => {
      workspace = workspaceOf(uris);
      sequences.allChanged();
      lookAgain(documents.uris());
      stories?.start();
    },
    settingsAre: (changed) => {
      const isOther = changed.largestFile !== settings.largestFile;
      settings = changed;
      if (isOther) lookAgain(documents.uris());
    },
    traits,
    stories,
    get settings() {
      return settings;
    },
    analysis: async (uri) => {
      gate.arrived();
      await gate.quiet();
      return analysed(uri);
    },
    sequenceFor: async (uri) => {
      gate.arrived();
      await gate.quiet();
      const content = (await analysed(uri))?.content;
      if (content?.sequenceFile !== undefined) return content.sequenceFile;
      const first = workspace.folders[0];
      const home =
        homeOf(uri, workspace) ?? (first && homeOf(`${first.replace(/\/$/, '')}/text.md`, workspace));
      return home ? sequences.nearest(home) : undefined;
    },
    isOpen: (snapshot) => documents.get(snapshot.uri) === snapshot,
    report: showing.report,
    get runs() {
      return analyst.runs;
    },
    get remembered() {
      return (
        documents.size +
        analyst.size +
        leanLessons.size +
        sequences.size +
        typing.size +
        showing.size +
        names.size +
        closedSequences.size +
        (stories?.size ?? 0)
      );
    },
  };
}

/** The sequence that a story's verdict rests on. */
function sequenceFollowed({ content }: Analysis): SequenceFile | undefined {
  return content.kind === 'sequence' ? undefined : content.sequenceFile;
}
