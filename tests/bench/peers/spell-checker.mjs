// A spell checker's library behind the plainest language server.
import { spellCheckDocument } from 'cspell-lib';
import {
  createConnection,
  ProposedFeatures,
  TextDocumentSyncKind,
  TextDocuments,
} from 'vscode-languageserver/node.js';
import { TextDocument } from 'vscode-languageserver-textdocument';

const connection = createConnection(ProposedFeatures.all);
const documents = new TextDocuments(TextDocument);
connection.onInitialize(() => ({ capabilities: { textDocumentSync: TextDocumentSyncKind.Incremental } }));
documents.onDidChangeContent(async ({ document }) => {
  const { uri, version, languageId } = document;
  const { issues } = await spellCheckDocument(
    { uri, text: document.getText(), languageId, locale: 'en' },
    { noConfigSearch: true, generateSuggestions: false },
    { language: 'en' },
  );
  const diagnostics = issues.map(({ offset, text }) => ({
    range: { start: document.positionAt(offset), end: document.positionAt(offset + text.length) },
    message: text,
  }));
  connection.sendDiagnostics({ uri, version, diagnostics });
});
documents.listen(connection);
connection.listen();
