import { commands, Disposable, Uri, window, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import {
  type NoAnswer,
  type PrintAnswer,
  type PrintParams,
  printRequest,
  type ReadPicturesParams,
  type ReadPrintingResult,
  readPicturesRequest,
  readPrintingRequest,
} from '../../../server/src/editor/workshop/protocol.ts';
import { fontFiles } from '../../../server/src/materials/layout/font-files.ts';
import { storyFirst } from '../common-messages.ts';
import { fileName } from '../file-name.ts';
import { allParts, type PrintChoice } from '../preview/messages.ts';
import { PreviewPanel } from '../preview/preview-panel.ts';
import type { LastText } from './last-text.ts';
import { readPictures } from './pictures.ts';
import { printCollection } from './print-collection.ts';
import { askLayout, askPaper, savePrint } from './save-print.ts';

const suffixes = { book: '', teacher: '-teacher', practice: '-practice', cards: '-cards' } as const;

type Material = PrintParams['material'];

/** The print commands, and what the server needs of the client for them. */
export function registerPrinting(client: BaseLanguageClient, extensionUri: Uri, text: LastText): Disposable {
  const preview = new PreviewPanel(client, extensionUri, text, (story, choice) =>
    print(client, story, choice),
  );
  const command = (name: string, material: Material): Disposable =>
    commands.registerCommand(`battledore.print${name}`, () => askAndPrint(client, text, material));
  return Disposable.from(
    command('Book', 'book'),
    command('Teacher', 'teacher'),
    command('Practice', 'practice'),
    command('Cards', 'cards'),
    commands.registerCommand('battledore.printCollection', () => printCollection(client, text.document?.uri)),
    preview,
    client.onRequest(readPicturesRequest, (params: ReadPicturesParams) => readPictures(params)),
    client.onRequest(readPrintingRequest, () => readPrinting(extensionUri)),
  );
}

async function askAndPrint(client: BaseLanguageClient, text: LastText, material: Material): Promise<void> {
  const { document } = text;
  if (document?.languageId !== 'markdown') {
    await window.showInformationMessage(storyFirst());
    return;
  }
  const layout = material === 'book' ? await askLayout() : 'page';
  const paper = layout && (await askPaper());
  if (layout === undefined || paper === undefined) return;
  await print(client, document.uri, { material, layout, paper });
}

/** Asks for a place and prints a story there; says what keeps it from being printed. */
async function print(
  client: BaseLanguageClient,
  story: Uri,
  { material, layout, paper }: PrintChoice,
): Promise<void> {
  const name = fileName(story).replace(/\.[^.]*$/, '');
  const suffix = `${suffixes[material]}${layout === 'booklet' ? '-booklet' : ''}`;
  const params: PrintParams = { uri: story.toString(), material, layout, paper, parts: allParts };
  await savePrint(Uri.joinPath(story, '..', `${name}${suffix}.pdf`), () =>
    client.sendRequest<PrintAnswer | NoAnswer>(printRequest, params),
  );
}

async function readPrinting(extensionUri: Uri): Promise<ReadPrintingResult> {
  const read = async (name: string): Promise<Uint8Array> =>
    (await workspace.fs.readFile(Uri.joinPath(extensionUri, 'server', 'dist', name))).slice();
  const [script, regular, regularExtended, bold, boldExtended] = await Promise.all([
    read('print.js'),
    read(fontFiles.regular),
    read(fontFiles.regularExtended),
    read(fontFiles.bold),
    read(fontFiles.boldExtended),
  ]);
  return {
    script: new TextDecoder().decode(script),
    fonts: { regular, regularExtended, bold, boldExtended },
  };
}
