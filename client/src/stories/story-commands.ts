import { commands, Disposable, l10n, type QuickPickItem, Uri, window } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import {
  type CheckStoriesParams,
  type CheckStoriesResult,
  checkStoriesRequest,
  listFilesRequest,
  type StoriesParams,
  storiesNotification,
  type WhatIfParams,
  type WhatIfResult,
  whatIfRequest,
} from '../../../server/src/editor/protocol.ts';
import {
  type SeriesPlaceParams,
  type SeriesPlaceResult,
  seriesPlaceRequest,
} from '../../../server/src/editor/series/protocol.ts';
import type { FollowedGauge } from '../followed-gauge.ts';
import { revealPlace } from '../places.ts';
import { listWorkspaceFiles } from './list-files.ts';
import { StoriesItem } from './stories-item.ts';
import { changeRows, failingRows, type StoryRow } from './story-rows.ts';

/** What the editor shows of all stories of the workspace, open or not; `latest` is what the server said last. */
export function registerStories(
  client: BaseLanguageClient,
  followed: FollowedGauge,
): Disposable & { readonly latest: () => StoriesParams | undefined } {
  const item = new StoriesItem();
  let latest: StoriesParams | undefined;
  const registered = Disposable.from(
    item,
    client.onRequest(listFilesRequest, listWorkspaceFiles),
    client.onNotification(storiesNotification, (params: StoriesParams) => {
      latest = params;
      item.show(params);
    }),
    commands.registerCommand('battledore.checkStories', () => checkStories(client, true)),
    commands.registerCommand('battledore.clearStories', () => checkStories(client, false)),
    commands.registerCommand('battledore.failingStories', () =>
      chooseStory(client, latest === undefined ? [] : failingRows(latest), l10n.t('No story falls short.')),
    ),
    commands.registerCommand('battledore.tryStories', () => trySequence(client, followed)),
  );
  return { dispose: () => registered.dispose(), latest: () => latest };
}

async function checkStories(client: BaseLanguageClient, show: boolean): Promise<void> {
  const params: CheckStoriesParams = { show };
  const result = await client.sendRequest<CheckStoriesResult | null>(checkStoriesRequest, params);
  if (!show) return;
  if (result === null || result.stories === 0) {
    await window.showInformationMessage(l10n.t('There is no story with a sequence in this workspace.'));
    return;
  }
  await commands.executeCommand('workbench.actions.view.problems');
  window.setStatusBarMessage(
    l10n.t('{0} of {1} stories fall short.', result.failing, result.stories),
    10_000,
  );
}

async function trySequence(client: BaseLanguageClient, followed: FollowedGauge): Promise<void> {
  const { state } = followed;
  const document = window.activeTextEditor?.document;
  const sequenceUri =
    document?.languageId === 'yaml'
      ? document.uri.toString()
      : state.kind === 'gauge'
        ? state.gauge.lesson.sequenceUri
        : undefined;
  if (sequenceUri === undefined) {
    await window.showInformationMessage(l10n.t('Open a sequence, or a story that follows one, first.'));
    return;
  }
  const params: WhatIfParams = { sequenceUri };
  const result = await client.sendRequest<WhatIfResult | null>(whatIfRequest, params);
  if (result === null) {
    await window.showInformationMessage(
      l10n.t('This sequence has not been saved yet, so there is nothing to compare with.'),
    );
    return;
  }
  await chooseStory(
    client,
    changeRows(result),
    l10n.t('By the sequence as you have it here, every story stands as by the saved one.'),
  );
}

async function chooseStory(
  client: BaseLanguageClient,
  rows: readonly StoryRow[],
  nothing: string,
): Promise<void> {
  if (rows.length === 0) {
    await window.showInformationMessage(nothing);
    return;
  }
  const items = rows.map(({ uri, label, description, detail }): QuickPickItem & { readonly uri: string } => ({
    uri,
    label,
    description,
    detail,
  }));
  const chosen = await window.showQuickPick(items, {
    placeHolder: l10n.t('Choose a story to open it'),
    matchOnDescription: true,
    matchOnDetail: true,
  });
  if (chosen !== undefined) {
    const params: SeriesPlaceParams = { uri: chosen.uri, place: { kind: 'story' } };
    const range = await client.sendRequest<SeriesPlaceResult>(seriesPlaceRequest, params).catch(() => null);
    await revealPlace(Uri.parse(chosen.uri, true), range ?? undefined, { select: false, focus: true });
  }
}
