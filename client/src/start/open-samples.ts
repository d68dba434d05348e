import { commands, type ExtensionContext, l10n, Uri, window, workspace } from 'vscode';
import { isThere } from './new-file.ts';

/** The folder that the samples are laid in, and the draft that is opened first. */
const folderName = 'battledore-samples';
const draftName = '14-draft-the-long-pink-sock.md';

/** Where a folder is remembered that opens in a window of its own. */
const waitingKey = 'battledore.samplesToOpen';

/**
 * Lays the sample stories in a folder of the writer's choice and opens their draft. Of samples that are there already
 * only missing files are laid anew; nothing is written over.
 */
export async function openSamples(context: ExtensionContext): Promise<void> {
  const place = await choosePlace();
  if (place === undefined) return;
  const folder = Uri.joinPath(place, folderName);
  try {
    const wasThere = await isThere(folder);
    await layOut(folder, context.extensionUri);
    if (wasThere) {
      void window.showInformationMessage(
        l10n.t('The samples are there already; nothing of them was written over.'),
      );
    }
  } catch (fault) {
    const reason = fault instanceof Error ? fault.message : String(fault);
    await window.showErrorMessage(l10n.t('The samples could not be written: {0}', reason));
    return;
  }
  if (workspace.getWorkspaceFolder(folder) !== undefined) {
    await openDraft(folder);
    return;
  }
  // The window begins anew with the folder, and the extension with it.
  await context.globalState.update(waitingKey, folder.toString());
  try {
    await commands.executeCommand('vscode.openFolder', folder, { forceReuseWindow: !hasFolder() });
  } catch (fault) {
    await context.globalState.update(waitingKey, undefined);
    throw fault;
  }
}

/** Opens the draft of samples that were laid out before this window began. */
export async function openWaitingSamples({ globalState }: ExtensionContext): Promise<void> {
  const waiting = globalState.get<string>(waitingKey);
  if (waiting === undefined) return;
  const folder = Uri.parse(waiting, true);
  if (workspace.getWorkspaceFolder(folder) === undefined) return;
  await globalState.update(waitingKey, undefined);
  await openDraft(folder);
}

function hasFolder(): boolean {
  return (workspace.workspaceFolders ?? []).length > 0;
}

async function choosePlace(): Promise<Uri | undefined> {
  const own = (workspace.workspaceFolders ?? [])
    .filter(({ uri }) => workspace.fs.isWritableFileSystem(uri.scheme) !== false)
    .map(({ name, uri }) => ({
      label: l10n.t('In {0}', name),
      detail: l10n.t('A folder “{0}” is made there.', folderName),
      uri,
    }));
  if (own.length > 0) {
    const elsewhere = {
      label: l10n.t('Elsewhere…'),
      detail: l10n.t('They open in a window of their own.'),
      uri: undefined,
    };
    const chosen = await window.showQuickPick([...own, elsewhere], {
      title: l10n.t('Where the sample stories go'),
    });
    if (chosen === undefined || chosen.uri !== undefined) return chosen?.uri;
  }
  const chosen = await window.showOpenDialog({
    canSelectFiles: false,
    canSelectFolders: true,
    title: l10n.t('Where the sample stories go'),
    openLabel: l10n.t('Put Samples Here'),
  });
  return chosen?.[0];
}

/**
 * Writes the samples that are not there, so that a laying out that broke off is completed by the next. They lie in one file of
 * the package, since a package in the browser has no folders that can be listed.
 */
async function layOut(folder: Uri, extensionUri: Uri): Promise<void> {
  const file = Uri.joinPath(extensionUri, 'client', 'dist', 'samples.json');
  const text = new TextDecoder().decode(await workspace.fs.readFile(file));
  const samples: Readonly<Record<string, string>> = JSON.parse(text);
  for (const [path, content] of Object.entries(samples)) {
    const sample = Uri.joinPath(folder, ...path.split('/'));
    if (!(await isThere(sample))) await workspace.fs.writeFile(sample, new TextEncoder().encode(content));
  }
}

async function openDraft(folder: Uri): Promise<void> {
  const draft = Uri.joinPath(folder, draftName);
  if (await isThere(draft)) await window.showTextDocument(draft, { preview: false });
}
