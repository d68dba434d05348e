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
 * change with as many diagnostics as BENCH_DIAGNOSTICS says.
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
      message: `Finding ${index} of a word that is not taught yet, as in light.`,
      severity: 2,
      source: 'empty',
      code: 'untaught-spelling',
    })),
  });
});
documents.listen(connection);
connection.listen();
