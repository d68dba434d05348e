import { l10n, ProgressLocation, type QuickPickItem, Uri, window, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import {
  type SeriesReportParams,
  type SeriesReportResult,
  seriesReportRequest,
} from '../../../server/src/editor/series/protocol.ts';
import { fileName } from '../file-name.ts';
import { saveFile } from '../save-file.ts';

type Choice = QuickPickItem & Pick<SeriesReportParams, 'format' | 'table'>;

const choices = (): readonly Choice[] => [
  { label: 'HTML', detail: l10n.t('One page to read and to print'), format: 'html' },
  {
    label: l10n.t('CSV: stories'),
    detail: l10n.t('A table for a spreadsheet'),
    format: 'csv',
    table: 'stories',
  },
  { label: l10n.t('CSV: spellings'), detail: l10n.t('Uses by stories'), format: 'csv', table: 'spellings' },
  {
    label: l10n.t('CSV: high-frequency words'),
    detail: l10n.t('Uses by stories'),
    format: 'csv',
    table: 'high-frequency-words',
  },
  {
    label: l10n.t('CSV: words'),
    detail: l10n.t('Every word with its first story, count, kind and parts'),
    format: 'csv',
    table: 'words',
  },
  { label: l10n.t('CSV: gaps'), detail: l10n.t('What is missing'), format: 'csv', table: 'gaps' },
  { label: 'JSON', detail: l10n.t('Everything, for programs'), format: 'json' },
];

/** Asks for a form and a place, and writes the series there. `uri` is its sequence or one of its stories. */
export async function saveReport(client: BaseLanguageClient, uri: string | undefined): Promise<void> {
  const choice = await window.showQuickPick(choices(), { placeHolder: l10n.t('Form of the report') });
  if (choice === undefined) return;
  const { format, table } = choice;
  const params: SeriesReportParams = { format, ...(table && { table }), ...(uri !== undefined && { uri }) };
  const folder = workspace.workspaceFolders?.[0]?.uri;
  const target = await window.showSaveDialog({
    ...(folder && {
      defaultUri: Uri.joinPath(folder, `series${table === undefined ? '' : `-${table}`}.${format}`),
    }),
    filters: { [format.toUpperCase()]: [format] },
    title: l10n.t('Save Series Report'),
  });
  if (target === undefined) return;
  try {
    const text = await window.withProgress(
      { location: ProgressLocation.Notification, title: l10n.t('Writing the report') },
      () => client.sendRequest<SeriesReportResult>(seriesReportRequest, params),
    );
    if (text === null) {
      await window.showErrorMessage(l10n.t('No report was written: no story here follows a sequence.'));
      return;
    }
    if (!(await saveFile(target, new TextEncoder().encode(text)))) return;
    void window.showInformationMessage(l10n.t('Saved {0}.', fileName(target)));
  } catch (fault) {
    const reason = fault instanceof Error ? fault.message : String(fault);
    await window.showErrorMessage(l10n.t('The report could not be saved: {0}', reason));
  }
}
