import { commands, Disposable, l10n, Uri, window } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import type { ProtocolRange } from '../../server/src/editor/protocol.ts';
import { storyFirst } from './common-messages.ts';
import { fileName } from './file-name.ts';
import type { FollowedGauge } from './followed-gauge.ts';
import { revealPlace } from './places.ts';

/** The commands of the palette. */
export function registerCommands(client: BaseLanguageClient, followed: FollowedGauge): Disposable {
  return Disposable.from(
    commands.registerCommand('battledore.showGauge', () => commands.executeCommand('battledore.gauge.focus')),
    commands.registerCommand('battledore.openLesson', () => openLesson(followed)),
    // Called by quick fixes, not from the palette.
    commands.registerCommand('battledore.goTo', (uri: string, place: ProtocolRange['start']) =>
      revealPlace(Uri.parse(uri, true), { start: place, end: place }, { select: true, focus: true }),
    ),
    commands.registerCommand('battledore.changedElsewhere', tellOfChange),
    commands.registerCommand('battledore.restartServer', () => restart(client)),
  );
}

/** A quick fix has changed a file that may not be in sight: undoing in the story would not take that back. */
async function tellOfChange(uri: string, place: ProtocolRange['start']): Promise<void> {
  const file = Uri.parse(uri, true);
  const show = l10n.t('Show');
  const chosen = await window.showInformationMessage(l10n.t('{0} was changed.', fileName(file)), show);
  if (chosen === show) await revealPlace(file, { start: place, end: place }, { select: true, focus: true });
}

async function openLesson(followed: FollowedGauge): Promise<void> {
  const { state } = followed;
  if (state.kind !== 'gauge') {
    await window.showInformationMessage(storyFirst());
    return;
  }
  const { sequenceUri, range } = state.gauge.lesson;
  await revealPlace(Uri.parse(sequenceUri, true), range, { select: true, focus: true });
}

async function restart(client: BaseLanguageClient): Promise<void> {
  // A server that hangs does not answer the request to stop; it is left behind after the client's own time limit.
  if (client.needsStop()) await client.stop().catch(() => undefined);
  await client.start();
}
