import {
  CodeActionKind,
  type Connection,
  DidChangeConfigurationNotification,
  DidChangeWatchedFilesNotification,
  type DocumentDiagnosticParams,
  type DocumentDiagnosticReport,
  DocumentDiagnosticReportKind,
  ErrorCodes,
  type InitializeError,
  ResponseError,
  type ServerCapabilities,
  TextDocumentSyncKind,
} from 'vscode-languageserver';
import { createWordFinders, type WordFinders } from '../words/word-finders.ts';
import { type ClientTraits, traitsOf } from './client-traits.ts';
import { codeActionsFor } from './code-actions.ts';
import { createCompleter } from './completion.ts';
import { diagnosticSource } from './diagnostics.ts';
import { definitionAnswer, hoverAnswer, outlineAnswer } from './features.ts';
import type { Host } from './host.ts';
import {
  type CheckStoriesParams,
  type CheckStoriesResult,
  checkStoriesRequest,
  type WhatIfParams,
  type WhatIfResult,
  whatIfRequest,
} from './protocol.ts';
import { createRunner, type Runner } from './runner.ts';
import { answerSeries } from './series/answer-series.ts';
import { type Session, startSession } from './session.ts';
import { isRecord, readSettings, settingsSection } from './settings.ts';
import * as shapes from './shapes.ts';
import { answerStart } from './start/answer-start.ts';
import { answerWorkshop } from './workshop/answer-workshop.ts';

/** What can be looked at from outside while a server runs. */
export interface RunningServer {
  /** How many analyses of documents have been made. */
  readonly runs: number;
  /** How many things are remembered of documents and files, in all caches together. */
  readonly remembered: number;
}

/**
 * Serves one client over a connection that does not listen yet; the same code on Node and in a browser's worker.
 * Every handler runs in the runner, so that a fault costs one answer and never the server.
 */
export function startServer(connection: Connection, host: Host): RunningServer {
  const runner = createRunner((text) => connection.console.error(text));
  const finders = createWordFinders(host.phonics);
  let session: Session | undefined;

  connection.onInitialize((params) => {
    if (runner.life.state !== 'not-initialized') {
      return new ResponseError<InitializeError>(
        ErrorCodes.InvalidRequest,
        'The server has been initialized already.',
      );
    }
    const traits = traitsOf(params);
    const started = startSession(connection, host, traits, readSettings(traits.settings), runner, finders);
    session = started;
    runner.life.state = 'running';
    connection.onInitialized(
      runner.task('the start', shapes.anything, () => completeStart(connection, traits, started, runner)),
    );
    return { capabilities: capabilitiesFor(traits), serverInfo: { name: diagnosticSource } };
  });
  connection.onShutdown(() => {
    runner.life.state = 'shut-down';
    session = undefined;
  });
  listenToDocuments(connection, runner, () => session);
  answerRequests(connection, host, finders, runner, () => session);
  connection.listen();
  return {
    get runs() {
      return session?.runs ?? 0;
    },
    get remembered() {
      return session?.remembered ?? 0;
    },
  };
}

function capabilitiesFor({
  pullsDiagnostics,
  changesFolders,
  takesCodeActions,
}: ClientTraits): ServerCapabilities {
  return {
    positionEncoding: 'utf-16',
    textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental, save: true },
    hoverProvider: true,
    documentSymbolProvider: true,
    definitionProvider: true,
    completionProvider: {},
    ...(takesCodeActions ? { codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix] } } : {}),
    ...(pullsDiagnostics
      ? {
          diagnosticProvider: {
            identifier: diagnosticSource,
            interFileDependencies: true,
            workspaceDiagnostics: false,
          },
        }
      : {}),
    ...(changesFolders
      ? { workspace: { workspaceFolders: { supported: true, changeNotifications: true } } }
      : {}),
  };
}

/** What has to wait for `initialized`: registrations, and the settings. */
async function completeStart(
  connection: Connection,
  traits: ClientTraits,
  session: Session,
  runner: Runner,
): Promise<void> {
  const takeSettings = async (sent?: unknown): Promise<void> => {
    const section = isRecord(sent) ? sent[settingsSection] : undefined;
    session.settingsAre(
      readSettings(
        traits.givesConfiguration ? await connection.workspace.getConfiguration(settingsSection) : section,
      ),
    );
  };
  connection.onDidChangeConfiguration(
    runner.task('taking in settings', shapes.record({}), ({ settings }) => takeSettings(settings)),
  );
  if (traits.changesFolders) {
    connection.workspace.onDidChangeWorkspaceFolders(
      runner.task('taking in workspace folders', shapes.anything, async () => {
        const folders = await connection.workspace.getWorkspaceFolders();
        session.foldersAre((folders ?? []).map(({ uri }) => uri));
      }),
    );
  }
  const registrations: Promise<unknown>[] = [];
  if (traits.registersConfiguration) {
    registrations.push(
      connection.client.register(DidChangeConfigurationNotification.type, { section: settingsSection }),
    );
  }
  if (traits.registersWatchers) {
    const isIndexing = session.stories !== undefined;
    const watchers = [{ globPattern: isIndexing ? '**/*.{yaml,yml,md,markdown}' : '**/*.{yaml,yml}' }];
    registrations.push(connection.client.register(DidChangeWatchedFilesNotification.type, { watchers }));
  }
  if (traits.givesConfiguration) registrations.push(takeSettings());
  await Promise.all(registrations);
  session.stories?.start();
}

function listenToDocuments(connection: Connection, runner: Runner, current: () => Session | undefined): void {
  connection.onDidOpenTextDocument(
    runner.task('opening a document', shapes.opened, ({ textDocument: { uri, languageId, version, text } }) =>
      current()?.opened(uri, languageId, version, text),
    ),
  );
  connection.onDidChangeTextDocument(
    runner.task('taking in an edit', shapes.edited, ({ textDocument: { uri, version }, contentChanges }) =>
      current()?.edited(uri, contentChanges, version),
    ),
  );
  connection.onDidSaveTextDocument(
    runner.task('taking in a save', shapes.document, ({ textDocument }) =>
      current()?.saved(textDocument.uri),
    ),
  );
  connection.onDidCloseTextDocument(
    runner.task('closing a document', shapes.document, ({ textDocument }) =>
      current()?.closed(textDocument.uri),
    ),
  );
  connection.onDidChangeWatchedFiles(
    runner.task('taking in changed files', shapes.changedFiles, ({ changes }) =>
      current()?.filesChanged(changes.map(({ uri }) => uri)),
    ),
  );
}

function answerRequests(
  connection: Connection,
  { phonics, thesaurus, printing }: Host,
  finders: WordFinders,
  runner: Runner,
  current: () => Session | undefined,
): void {
  const completer = createCompleter(phonics, finders);
  answerSeries(connection, printing === undefined ? {} : { printing }, runner, current);
  answerWorkshop(connection, { phonics, ...(printing && { printing }) }, finders, runner, current);
  answerStart(connection, phonics, finders, runner, current);
  connection.onCompletion(
    runner.request('completion', shapes.place, null, async ({ textDocument, position }) => {
      const session = current();
      const analysis = await session?.analysis(textDocument.uri);
      if (session === undefined || analysis === undefined) return null;
      return completer.completionsAt(analysis, position, session.settings.sounds);
    }),
  );
  connection.onHover(
    runner.request('a hover', shapes.place, null, async ({ textDocument, position }) => {
      const session = current();
      const analysis = await session?.analysis(textDocument.uri);
      if (session === undefined || analysis === undefined) return null;
      const { settings, traits } = session;
      const form = { sounds: settings.sounds, asMarkdown: traits.hoversMarkdown };
      return hoverAnswer(analysis, position, { phonics, finders }, form);
    }),
  );
  connection.onDocumentSymbol(
    runner.request('an outline', shapes.document, [], async ({ textDocument }) => {
      const session = current();
      const analysis = await session?.analysis(textDocument.uri);
      if (session === undefined || analysis === undefined) return [];
      return outlineAnswer(analysis, session.traits.takesTrees);
    }),
  );
  connection.onDefinition(
    runner.request('finding a lesson', shapes.place, [], async ({ textDocument, position }) => {
      const session = current();
      const analysis = await session?.analysis(textDocument.uri);
      if (session === undefined || analysis === undefined) return [];
      return definitionAnswer(analysis, position, session.traits.takesLinks);
    }),
  );
  connection.onCodeAction(
    runner.request('quick fixes', shapes.marked, [], async ({ textDocument, range, context }) => {
      const session = current();
      // The file is read before the text is looked at, so that nothing can change between the two.
      const words = await thesaurus?.().catch((fault: unknown) => {
        runner.report('reading the words by meaning', fault);
        return undefined;
      });
      const analysis = await session?.analysis(textDocument.uri);
      if (session === undefined || analysis === undefined) return [];
      const { isOpen, traits } = session;
      const takesVersions = traits.takesVersionedEdits;
      return codeActionsFor(analysis, range, context, {
        phonics,
        thesaurus: words,
        takesVersions,
        goesToPlaces: traits.goesToPlaces,
        isOpen,
      });
    }),
  );
  connection.onRequest<CheckStoriesResult | null, never>(
    checkStoriesRequest,
    runner.request<CheckStoriesParams, CheckStoriesResult | null>(
      'checking all stories',
      shapes.record({ show: shapes.truth }),
      null,
      ({ show }) => current()?.stories?.checkStories(show) ?? null,
    ),
  );
  connection.onRequest<WhatIfResult | null, never>(
    whatIfRequest,
    runner.request<WhatIfParams, WhatIfResult | null>(
      'trying a changed sequence',
      shapes.record({ sequenceUri: shapes.text, text: shapes.optional(shapes.text) }),
      null,
      (params) => current()?.stories?.whatIf(params) ?? null,
    ),
  );
  connection.languages.diagnostics.on(
    runner.request(
      'a pull of diagnostics',
      shapes.document,
      nothingFound,
      async ({ textDocument, previousResultId }: DocumentDiagnosticParams) => {
        const session = current();
        const analysis = await session?.analysis(textDocument.uri);
        return analysis === undefined || session === undefined
          ? nothingFound
          : session.report(analysis, previousResultId);
      },
    ),
  );
}

const nothingFound: DocumentDiagnosticReport = { kind: DocumentDiagnosticReportKind.Full, items: [] };
