// The library of links and headings in markdown behind the plainest language server, with the parser it is made for.
import MarkdownIt from 'markdown-it';
import {
  createConnection,
  Emitter,
  ProposedFeatures,
  TextDocumentSyncKind,
  TextDocuments,
} from 'vscode-languageserver/node.js';
import { TextDocument } from 'vscode-languageserver-textdocument';
import * as markdown from 'vscode-markdown-languageservice';
import { URI } from 'vscode-uri';

const connection = createConnection(ProposedFeatures.all);
const documents = new TextDocuments(TextDocument);
const [changed, created, deleted] = [new Emitter(), new Emitter(), new Emitter()];
const parser = new MarkdownIt({ html: true });
let folders = [];
const never = { isCancellationRequested: false, onCancellationRequested: () => ({ dispose() {} }) };

const service = markdown.createLanguageService({
  workspace: {
    get workspaceFolders() {
      return folders;
    },
    onDidChangeMarkdownDocument: changed.event,
    onDidCreateMarkdownDocument: created.event,
    onDidDeleteMarkdownDocument: deleted.event,
    getAllMarkdownDocuments: async () => documents.all(),
    hasMarkdownDocument: (uri) => documents.get(uri.toString()) !== undefined,
    openMarkdownDocument: async (uri) => documents.get(uri.toString()),
    stat: async () => undefined,
    readDirectory: async () => [],
  },
  parser: {
    slugifier: markdown.githubSlugifier,
    tokenize: async (document) => parser.parse(document.getText(), {}),
  },
  logger: { level: markdown.LogLevel.Off, log() {} },
});

const { warning } = markdown.DiagnosticLevel;
const options = {
  validateReferences: warning,
  validateFragmentLinks: warning,
  validateFileLinks: warning,
  validateMarkdownFileLinkFragments: warning,
  validateUnusedLinkDefinitions: warning,
  validateDuplicateLinkDefinitions: warning,
  ignoreLinks: [],
};

connection.onInitialize(({ workspaceFolders }) => {
  folders = (workspaceFolders ?? []).map(({ uri }) => URI.parse(uri));
  return { capabilities: { textDocumentSync: TextDocumentSyncKind.Incremental } };
});
documents.onDidOpen(({ document }) => created.fire(document));
documents.onDidChangeContent(async ({ document }) => {
  changed.fire(document);
  const { uri, version } = document;
  const diagnostics = await service.computeDiagnostics(document, options, never);
  connection.sendDiagnostics({ uri, version, diagnostics });
});
documents.onDidClose(({ document }) => deleted.fire(URI.parse(document.uri)));
documents.listen(connection);
connection.listen();
