import { commands, Disposable, type ExtensionContext, l10n, Uri, window, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import {
  type NewStoryAnswer,
  type NewStoryParams,
  newStoryRequest,
  type SequenceAnswer,
  sequenceRequest,
} from '../../../server/src/editor/start/protocol.ts';
import { storyFileName } from '../../../server/src/start/story-file-name.ts';
import { newSequence } from './begin-sequence.ts';
import { registerImport } from './import-sequence.ts';
import { folderForNewFiles, freeFile, writeAndOpen } from './new-file.ts';
import { openSamples, openWaitingSamples } from './open-samples.ts';

/** The commands that begin a story or a sequence, take a sequence elsewhere and back, and open the samples. */
export function registerStartCommands(client: BaseLanguageClient, context: ExtensionContext): Disposable {
  void openWaitingSamples(context);
  return Disposable.from(
    commands.registerCommand('battledore.openSamples', () => openSamples(context)),
    commands.registerCommand('battledore.newStory', () => beginStory(client)),
    commands.registerCommand('battledore.newSequence', newSequence),
    commands.registerCommand('battledore.exportSequence', () => exportSequence(client)),
    registerImport(client),
  );
}

async function beginStory(client: BaseLanguageClient): Promise<void> {
  const found = await findSequence(client);
  if (found === undefined) return;
  const lesson = await window.showQuickPick(
    found.lessons.map(({ name, title }) => ({ label: name, description: title ?? '' })),
    { title: l10n.t('New story: the lesson'), matchOnDescription: true },
  );
  if (lesson === undefined) return;
  const title = await window.showInputBox({
    title: l10n.t('New story: the title'),
    validateInput: (text) => (text.trim() === '' ? l10n.t('A story has a title.') : undefined),
  });
  if (title === undefined) return;
  const pages = await window.showInputBox({
    title: l10n.t('New story: how many pages'),
    value: '8',
    validateInput: (text) => (/^[1-9]\d?$/.test(text.trim()) ? undefined : l10n.t('A number from 1 to 99.')),
  });
  if (pages === undefined) return;
  const wish = { title, lesson: lesson.label, pages: Number(pages) };
  const file = await freeFile(found.folder, storyFileName(wish), l10n.t('New story: the file'));
  if (file === undefined) return;
  const params: NewStoryParams = { ...wish, uri: file.toString() };
  const made = await client.sendRequest<NewStoryAnswer | null>(newStoryRequest, params);
  if (made === null) return;
  await writeAndOpen(file, made.text);
  if (made.pages > wish.pages) {
    await window.showInformationMessage(
      l10n.t('The story has {0} pages, so that the practice of the lesson has room on them.', made.pages),
    );
  }
}

async function exportSequence(client: BaseLanguageClient): Promise<void> {
  const found = await findSequence(client);
  if (found === undefined) return;
  const file = await window.showSaveDialog({
    defaultUri: Uri.joinPath(found.folder, 'sequence.csv'),
    filters: { CSV: ['csv'] },
  });
  if (file !== undefined) await workspace.fs.writeFile(file, new TextEncoder().encode(found.csv));
}

/** The sequence for the open file, else for the first workspace folder, and the folder to write in; says so when there is none. */
async function findSequence(
  client: BaseLanguageClient,
): Promise<(SequenceAnswer & { readonly folder: Uri }) | undefined> {
  const folder = folderForNewFiles();
  const answer =
    folder === undefined
      ? null
      : await client.sendRequest<SequenceAnswer | null>(sequenceRequest, {
          uri: Uri.joinPath(folder, 'sequence.yaml').toString(),
        });
  if (folder !== undefined && answer !== null) return { ...answer, folder };
  const begin = l10n.t('New Sequence');
  const chosen = await window.showInformationMessage(
    l10n.t('There is no sequence.yaml here or above.'),
    begin,
  );
  if (chosen === begin) await commands.executeCommand('battledore.newSequence');
  return undefined;
}
