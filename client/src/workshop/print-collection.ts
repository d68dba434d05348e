import { l10n, Uri, window } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import {
  type SeriesAnswer,
  type SeriesParams,
  seriesRequest,
} from '../../../server/src/editor/series/protocol.ts';
import {
  type NoAnswer,
  type PrintAnswer,
  type PrintCollectionParams,
  printCollectionRequest,
} from '../../../server/src/editor/workshop/protocol.ts';
import { askLayout, askPaper, savePrint } from './save-print.ts';

/**
 * Asks which stories of a series, how and where, and prints them as one book in the order of the year.
 *
 * @param text the text at hand, a sequence or a story: its series is printed, else the one with the most stories.
 */
export async function printCollection(client: BaseLanguageClient, text: Uri | undefined): Promise<void> {
  const params: SeriesParams = text === undefined ? {} : { uri: text.toString() };
  const series = await client.sendRequest<SeriesAnswer | null>(seriesRequest, params);
  if (series === null || series.stories.length === 0) {
    await window.showInformationMessage(l10n.t('There is no story with a sequence in this workspace.'));
    return;
  }
  const uris = await chooseStories(series);
  if (uris === undefined || uris.length === 0) return;
  const layout = await askLayout();
  const paper = layout && (await askPaper());
  if (layout === undefined || paper === undefined) return;
  const name = layout === 'booklet' ? 'stories-booklet.pdf' : 'stories.pdf';
  const wish: PrintCollectionParams = { uris, layout, paper };
  await savePrint(Uri.joinPath(Uri.parse(series.uri, true), '..', name), () =>
    client.sendRequest<PrintAnswer | NoAnswer>(printCollectionRequest, wish),
  );
}

/** Those that pass are marked already: a book for children holds no draft unless the writer takes it in. */
async function chooseStories({ stories }: SeriesAnswer): Promise<readonly string[] | undefined> {
  const items = stories.map(({ uri, title, lesson, passes, why }) => ({
    uri,
    label: title,
    description: passes ? l10n.t('lesson {0}', lesson) : l10n.t('lesson {0}, falls short: {1}', lesson, why),
    picked: passes,
  }));
  const chosen = await window.showQuickPick(items, {
    canPickMany: true,
    matchOnDescription: true,
    placeHolder: l10n.t('Stories of the book, in the order of the year'),
  });
  return chosen?.map(({ uri }) => uri);
}
