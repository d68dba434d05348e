import { commands, Disposable, FileSystemError, l10n, Uri, window, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { type SequenceAnswer, sequenceRequest } from '../../../server/src/editor/start/protocol.ts';
import { newStory, storyFileName } from '../../../server/src/start/new-story.ts';

/** The commands that begin a story and take a sequence elsewhere. */
export function registerStartCommands(client: BaseLanguageClient): Disposable {
  return Disposable.from(
    commands.registerCommand('battledore.newStory', () => beginStory(client)),
    commands.registerCommand('battledore.exportSequence', () => exportSequence(client)),
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
  const file = Uri.joinPath(found.folder, storyFileName(wish));
  if (await isThere(file)) {
    await window.showWarningMessage(l10n.t('There is a file {0} already.', storyFileName(wish)));
    return;
  }
  await workspace.fs.writeFile(file, new TextEncoder().encode(newStory(wish)));
  await window.showTextDocument(file);
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
  const opened = window.activeTextEditor?.document.uri;
  const inFolder = opened !== undefined && workspace.getWorkspaceFolder(opened) !== undefined;
  const folder = inFolder ? Uri.joinPath(opened, '..') : workspace.workspaceFolders?.[0]?.uri;
  const answer =
    folder === undefined
      ? null
      : await client.sendRequest<SequenceAnswer | null>(sequenceRequest, {
          uri: Uri.joinPath(folder, 'sequence.yaml').toString(),
        });
  if (folder !== undefined && answer !== null) return { ...answer, folder };
  await window.showInformationMessage(l10n.t('There is no sequence.yaml beside this file or above it.'));
  return undefined;
}

async function isThere(file: Uri): Promise<boolean> {
  try {
    await workspace.fs.stat(file);
    return true;
  } catch (error) {
    if (error instanceof FileSystemError) return false;
    throw error;
  }
}
