import {
  createConnection,
  type InitializeResult,
  ProposedFeatures,
  TextDocumentSyncKind,
  TextDocuments,
} from 'vscode-languageserver/node';
import { TextDocument } from 'vscode-languageserver-textdocument';

/**
 * The lower bound of a language server: the same library, bundled the same way, that keeps the documents and answers each
 * change with as many diagnostics as BENCH_DIAGNOSTICS says, each as long as ours.
 */
const connection = createConnection(ProposedFeatures.all);
const documents = new TextDocuments(TextDocument);
const count = Number(process.env.BENCH_DIAGNOSTICS ?? 0);

connection.onInitialize(
  (): InitializeResult => ({ capabilities: { textDocumentSync: TextDocumentSyncKind.Incremental } }),
);
documents.onDidChangeContent(({ document }) => {
  const range = { start: { line: 5, character: 0 }, end: { line: 5, character: 4 } };
  void connection.sendDiagnostics({
    uri: document.uri,
    version: document.version,
    diagnostics: Array.from({ length: count }, (_, index) => ({
      range,
      message: `“moonlight” needs igh as in light, which lesson ${index % 36} teaches.`,
      severity: 2,
      source: 'battledore',
      code: 'untaught-spelling',
    })),
  });
});
documents.listen(connection);
connection.listen();
