import { FileSystemError, l10n, Uri, window, workspace } from 'vscode';

/** Where new files go: beside the file at the front when it is in the workspace, else the first workspace folder. */
export function folderForNewFiles(): Uri | undefined {
  const opened = window.activeTextEditor?.document.uri;
  const inFolder = opened !== undefined && workspace.getWorkspaceFolder(opened) !== undefined;
  return inFolder ? Uri.joinPath(opened, '..') : workspace.workspaceFolders?.[0]?.uri;
}

/**
 * A file that is not there yet: the name as given, else one that the writer chooses. Undefined when she gives up.
 *
 * @param title stands over the question.
 */
export async function freeFile(folder: Uri, name: string, title: string): Promise<Uri | undefined> {
  const file = Uri.joinPath(folder, name);
  if (!(await isThere(file))) return file;
  const [, stem = name, extension = ''] = /^(.+?)(\.[^.]+)?$/.exec(name) ?? [];
  let free = 2;
  while (await isThere(Uri.joinPath(folder, `${stem}-${free}${extension}`))) free += 1;
  const chosen = await window.showInputBox({
    title,
    prompt: l10n.t('There is a file {0} already, and it stays as it is.', name),
    value: `${stem}-${free}${extension}`,
    valueSelection: [0, `${stem}-${free}`.length],
    validateInput: async (text) => {
      const given = text.trim();
      if (given === '' || /[\\/]/.test(given)) return l10n.t('A file name, without folders.');
      if (!given.endsWith(extension)) return l10n.t('The name ends in {0}.', extension);
      return (await isThere(Uri.joinPath(folder, given)))
        ? l10n.t('There is a file {0} already.', given)
        : undefined;
    },
  });
  return chosen === undefined ? undefined : Uri.joinPath(folder, chosen.trim());
}

/** Writes a file that was not there a moment ago and opens it. */
export async function writeAndOpen(file: Uri, text: string): Promise<void> {
  if (await isThere(file))
    throw new Error(`${file.path} has come into being meanwhile; nothing was written.`);
  await workspace.fs.writeFile(file, new TextEncoder().encode(text));
  await window.showTextDocument(file);
}

/** Whether something stands at an address. */
export async function isThere(file: Uri): Promise<boolean> {
  try {
    await workspace.fs.stat(file);
    return true;
  } catch (error) {
    if (error instanceof FileSystemError) return false;
    throw error;
  }
}
