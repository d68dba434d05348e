import type { ExtensionContext } from 'vscode';
import type { BaseLanguageClient, LanguageClientOptions } from 'vscode-languageclient';
import { State } from 'vscode-languageclient';
import {
  type GaugeParams,
  gaugeNotification,
  type InitializationOptions,
  type ReadFileParams,
  readFileRequest,
  readMeaningsRequest,
} from '../../server/src/editor/protocol.ts';
import { registerCommands } from './commands.ts';
import { FollowedGauge } from './followed-gauge.ts';
import { GaugeStore } from './gauge-store.ts';
import { GaugeViewProvider } from './gauge-view.ts';
import { readMeanings } from './meanings.ts';
import { registerReport } from './report/report-command.ts';
import { SeriesPanel } from './series/series-panel.ts';
import { registerStartCommands } from './start/start-commands.ts';
import { StatusItem } from './status-item.ts';
import { registerStories } from './stories/story-commands.ts';
import { startWhenNeeded } from './when-needed.ts';
import { LastText } from './workshop/last-text.ts';
import { registerPrinting } from './workshop/printing.ts';
import { WorkshopViewProvider } from './workshop/workshop-view.ts';
import { readWorkspaceFile } from './workspace-file.ts';

/** The running extension. */
export interface Extension {
  /** Settles when the first attempt to start the server is over, whether it succeeded, failed or was not needed yet. */
  readonly started: Promise<void>;
  /** Stops the server. */
  stop(): Promise<void>;
}

/**
 * All that desktop and browser share: the client, the gauge in its two forms and the commands.
 *
 * @param createClient makes the client for the place where the extension runs; called once.
 */
export function startExtension(
  context: ExtensionContext,
  createClient: (options: LanguageClientOptions) => BaseLanguageClient,
): Extension {
  const client = createClient(clientOptions());
  const gauges = new GaugeStore();
  const followed = new FollowedGauge(gauges);
  const view = new GaugeViewProvider(context.extensionUri, followed);
  const text = new LastText();
  const stories = registerStories(client, followed);
  context.subscriptions.push(
    text,
    registerPrinting(client, context.extensionUri, text),
    ...(['words', 'chain', 'fit'] as const).map(
      (kind) => new WorkshopViewProvider(kind, context.extensionUri, client, text),
    ),
    gauges,
    followed,
    new StatusItem(gauges),
    view,
    registerCommands(client, followed),
    registerStartCommands(client, context),
    stories,
    registerReport(context, () => gauges.server, stories.latest),
    new SeriesPanel(context.extensionUri, client),
    client.onNotification(gaugeNotification, (params: GaugeParams) => gauges.accept(params)),
    client.onRequest(readFileRequest, (params: ReadFileParams) => readWorkspaceFile(params.uri)),
    client.onRequest(readMeaningsRequest, () => readMeanings(context.extensionUri)),
    client.onDidChangeState(({ newState }) => gauges.serverIs(serverStates[newState])),
  );
  // A failed start has been shown and logged by the client; the gauge says it too and offers to try again.
  const start = startWhenNeeded(() => client.start().catch(() => gauges.serverIs('stopped')));
  context.subscriptions.push(start);
  return { started: start.looked, stop: () => client.stop() };
}

const serverStates = {
  [State.Stopped]: 'stopped',
  [State.Starting]: 'starting',
  [State.Running]: 'running',
  [State.StartFailed]: 'stopped',
} as const;

function clientOptions(): LanguageClientOptions {
  const initializationOptions: InitializationOptions = {
    readsFiles: true,
    listsFiles: true,
    goesToPlaces: true,
  };
  return {
    // Any scheme: a story may lie on a disk, in a repository that is only looked at, or nowhere yet.
    documentSelector: [{ language: 'markdown' }, { language: 'yaml' }, { pattern: '**/sequence.yaml' }],
    initializationOptions,
    markdown: { isTrusted: false, supportHtml: false },
  };
}
