import {
  commands,
  Diagnostic,
  type DiagnosticCollection,
  DiagnosticSeverity,
  Disposable,
  l10n,
  languages,
  type QuickPickItem,
  QuickPickItemKind,
  Range,
  Uri,
  window,
  workspace,
} from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import {
  type ImportSequenceAnswer,
  type ImportSequenceParams,
  importSequenceRequest,
} from '../../../server/src/editor/start/protocol.ts';
import { type ColumnUse, columnUses } from '../../../server/src/start/column-uses.ts';
import { fileName } from '../file-name.ts';
import { folderForNewFiles, freeFile, writeAndOpen } from './new-file.ts';

/** The command that makes a sequence of a spreadsheet saved as CSV, and the problems it leaves at the table's cells. */
export function registerImport(client: BaseLanguageClient): Disposable {
  const problems = languages.createDiagnosticCollection('battledore-import');
  return Disposable.from(
    problems,
    workspace.onDidChangeTextDocument(({ document, contentChanges }) => {
      if (contentChanges.length > 0) problems.delete(document.uri);
    }),
    commands.registerCommand('battledore.importSequence', (given?: unknown) =>
      importSequence(client, problems, given instanceof Uri ? given : undefined),
    ),
  );
}

/** In bytes; a year's lessons have some 20,000. */
const largestTable = 2_000_000;

async function importSequence(
  client: BaseLanguageClient,
  problems: DiagnosticCollection,
  given: Uri | undefined,
): Promise<void> {
  const table = given ?? tableAtTheFront() ?? (await askForTable());
  if (table === undefined) return;
  const bytes = await workspace.fs.readFile(table);
  if (bytes.byteLength > largestTable) {
    await window.showWarningMessage(
      l10n.t('{0} is too large for a table of lessons; at most two megabytes are read.', fileName(table)),
    );
    return;
  }
  const text = decoded(bytes);
  const heading = l10n.t('Import {0}', fileName(table));
  const answer = await confirmColumns(client, text, heading);
  if (answer === undefined) return;
  const isInFolder = workspace.getWorkspaceFolder(table) !== undefined;
  const folder = isInFolder ? Uri.joinPath(table, '..') : folderForNewFiles();
  if (folder === undefined) {
    const document = await workspace.openTextDocument({ language: 'yaml', content: answer.sequence });
    await window.showTextDocument(document);
  } else {
    const file = await freeFile(folder, 'sequence.yaml', heading);
    if (file === undefined) return;
    await writeAndOpen(file, answer.sequence);
  }
  problems.set(table, answer.problems.map(diagnosticOf));
  if (answer.problems.length > 0) {
    await commands.executeCommand('workbench.actions.view.problems');
    await window.showInformationMessage(
      l10n.t(
        'Lessons imported: {0}. Places in {1} that want a look: {2}; they are listed under Problems.',
        answer.lessons,
        fileName(table),
        answer.problems.length,
      ),
    );
  }
}

/** Shows what each column is taken for until the writer agrees; undefined when she gives up. */
async function confirmColumns(
  client: BaseLanguageClient,
  text: string,
  heading: string,
): Promise<ImportSequenceAnswer | undefined> {
  let uses: readonly ColumnUse[] | undefined;
  for (;;) {
    const params: ImportSequenceParams = { text, ...(uses === undefined ? {} : { uses }) };
    const answer = await client.sendRequest<ImportSequenceAnswer | null>(importSequenceRequest, params);
    if (answer === null) return undefined;
    if (answer.lessons === 0) {
      await window.showWarningMessage(
        l10n.t(
          'There is no lesson in this table. Its first row has the headings, each row below it a lesson.',
        ),
      );
      return undefined;
    }
    const agreed: QuickPickItem = {
      label: `$(check) ${l10n.t('Import {0} lessons', answer.lessons)}`,
      description:
        answer.problems.length === 0
          ? l10n.t('nothing unclear')
          : l10n.t('places to look at: {0}', answer.problems.length),
    };
    const columns = answer.columns.map((column, index): QuickPickItem & { readonly index: number } => ({
      index,
      label: column.heading === '' ? l10n.t('(column {0}, without a heading)', index + 1) : column.heading,
      description: `$(arrow-right) ${useLabel(column.use)}`,
      detail: column.example === '' ? l10n.t('(empty)') : column.example.replace(/\s+/g, ' ').slice(0, 100),
    }));
    const chosen = await window.showQuickPick<QuickPickItem>(
      [
        agreed,
        { label: l10n.t('columns; choose one to change it'), kind: QuickPickItemKind.Separator },
        ...columns,
      ],
      { title: heading, placeHolder: l10n.t('What each column is taken for'), ignoreFocusOut: true },
    );
    if (chosen === undefined) return undefined;
    const column = columns.find((each) => each === chosen);
    if (column === undefined) return answer;
    const use = await askForUse(column.label, answer.columns[column.index]?.use);
    const taken = answer.columns.map((each) => each.use);
    if (use !== undefined) uses = taken.map((each, index) => (index === column.index ? use : each));
  }
}

async function askForUse(column: string, current: ColumnUse | undefined): Promise<ColumnUse | undefined> {
  const items = columnUses.map((use) => ({
    use,
    label: useLabel(use),
    ...(use === current ? { description: l10n.t('as it is now') } : {}),
  }));
  const title = l10n.t('What is the column “{0}”?', column);
  return (await window.showQuickPick(items, { title, ignoreFocusOut: true }))?.use;
}

function useLabel(use: ColumnUse): string {
  switch (use) {
    case 'lesson':
      return l10n.t('name of the lesson');
    case 'title':
      return l10n.t('title of the lesson');
    case 'note':
      return l10n.t('note, kept as a comment');
    case 'left out':
      return l10n.t('left out');
    case 'readable':
    case 'sentence':
    case 'page':
    case 'practice':
    case 'repeats':
      return l10n.t('target: {0}', use);
    case 'story words':
      return l10n.t('target: story words');
    default:
      return l10n.t(use);
  }
}

function tableAtTheFront(): Uri | undefined {
  const document = window.activeTextEditor?.document;
  return document !== undefined && /\.(?:csv|tsv)$/i.test(document.uri.path) && !document.isDirty
    ? document.uri
    : undefined;
}

async function askForTable(): Promise<Uri | undefined> {
  const folder = folderForNewFiles();
  const files = await window.showOpenDialog({
    title: l10n.t('A spreadsheet saved as CSV, a lesson a row'),
    filters: { CSV: ['csv', 'tsv', 'txt'] },
    ...(folder === undefined ? {} : { defaultUri: folder }),
  });
  return files?.[0];
}

/** UTF-8, UTF-16 with its mark, else the code page that older spreadsheets write. */
function decoded(bytes: Uint8Array): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}

function diagnosticOf({ message, severity, range }: ImportSequenceAnswer['problems'][number]): Diagnostic {
  const { start, end } = range;
  const diagnostic = new Diagnostic(
    new Range(start.line, start.character, end.line, end.character),
    message,
    severity === 'error' ? DiagnosticSeverity.Error : DiagnosticSeverity.Warning,
  );
  diagnostic.source = 'battledore';
  return diagnostic;
}
