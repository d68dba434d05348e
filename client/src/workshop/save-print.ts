import { commands, l10n, ProgressLocation, type Uri, window, workspace } from 'vscode';
import { fromBase64 } from '../../../server/src/editor/workshop/base64.ts';
import type { NoAnswer, PrintAnswer, PrintParams } from '../../../server/src/editor/workshop/protocol.ts';
import { fileName } from '../file-name.ts';
import { saveFile } from '../save-file.ts';

/** Prints, says what keeps it from being printed, or asks for a place and says what was printed. Never rejects. */
export async function savePrint(proposed: Uri, print: () => Promise<PrintAnswer | NoAnswer>): Promise<void> {
  try {
    const answer = await window.withProgress(
      { location: ProgressLocation.Notification, title: l10n.t('Printing') },
      print,
    );
    if ('message' in answer) {
      await window.showErrorMessage(answer.message);
      return;
    }
    const target = await window.showSaveDialog({
      defaultUri: proposed,
      filters: { PDF: ['pdf'] },
      title: l10n.t('Print to PDF'),
    });
    if (target === undefined) return;
    if (!(await saveFile(target, fromBase64(answer.pdf)))) return;
    void showPrinted(target);
  } catch (fault) {
    await window.showErrorMessage(
      l10n.t('Printing failed: {0}', fault instanceof Error ? fault.message : String(fault)),
    );
  }
}

/** Says what was printed, and shows it in the explorer when that is wished. */
async function showPrinted(file: Uri): Promise<void> {
  const message = l10n.t('Printed {0}.', fileName(file));
  if (workspace.getWorkspaceFolder(file) === undefined) {
    void window.showInformationMessage(message);
    return;
  }
  const show = l10n.t('Show in Explorer');
  if ((await window.showInformationMessage(message, show)) === show)
    await commands.executeCommand('revealInExplorer', file);
}

/** Asks how the pages lie on the sheets; nothing when the writer gives up. */
export async function askLayout(): Promise<PrintParams['layout'] | undefined> {
  const choices = [
    { label: l10n.t('One page a sheet'), layout: 'page' as const },
    { label: l10n.t('Booklet to fold'), layout: 'booklet' as const },
  ];
  return (await window.showQuickPick(choices, { placeHolder: l10n.t('Layout') }))?.layout;
}

/** Asks for the paper; nothing when the writer gives up. */
export async function askPaper(): Promise<PrintParams['paper'] | undefined> {
  const choices = [
    { label: 'Letter', paper: 'letter' as const },
    { label: 'A4', paper: 'a4' as const },
  ];
  return (await window.showQuickPick(choices, { placeHolder: l10n.t('Paper') }))?.paper;
}
