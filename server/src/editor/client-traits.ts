import type { InitializeParams } from 'vscode-languageserver';
import type { InitializationOptions } from './protocol.ts';
import { isRecord } from './settings.ts';

/** What the client can do and what it has open, as it says at `initialize`. */
export interface ClientTraits {
  /** It asks for diagnostics and can be told to ask again; otherwise they are sent to it. */
  readonly pullsDiagnostics: boolean;
  /** It can be asked for its settings. */
  readonly givesConfiguration: boolean;
  /** It takes a registration for changed settings. */
  readonly registersConfiguration: boolean;
  /** It takes a registration for changed files. */
  readonly registersWatchers: boolean;
  /** It tells when workspace folders come and go. */
  readonly changesFolders: boolean;
  /** It renders markdown in hovers. */
  readonly hoversMarkdown: boolean;
  /** It takes links with the range they start from. */
  readonly takesLinks: boolean;
  /** It takes an outline as a tree. */
  readonly takesTrees: boolean;
  /** It takes code actions as such, with edits, not commands alone. */
  readonly takesCodeActions: boolean;
  /** It takes edits of a document with the version they are for. */
  readonly takesVersionedEdits: boolean;
  /** It reads files for the server. */
  readonly readsFiles: boolean;
  /** It lists files for the server. */
  readonly listsFiles: boolean;
  /** It has a command that moves the caret. */
  readonly goesToPlaces: boolean;
  /** Addresses of the folders that are open. */
  readonly folders: readonly string[];
  /** Settings it hands over at the start, unchecked. */
  readonly settings: unknown;
}

/** Reads the parameters of `initialize`; whatever is absent the client cannot do. */
export function traitsOf(params: InitializeParams): ClientTraits {
  const { workspace, textDocument } = params.capabilities;
  const options: Partial<Record<keyof InitializationOptions, unknown>> = isRecord(
    params.initializationOptions,
  )
    ? params.initializationOptions
    : {};
  const single = params.rootUri ?? undefined;
  return {
    pullsDiagnostics:
      textDocument?.diagnostic !== undefined && workspace?.diagnostics?.refreshSupport === true,
    givesConfiguration: workspace?.configuration === true,
    registersConfiguration: workspace?.didChangeConfiguration?.dynamicRegistration === true,
    registersWatchers: workspace?.didChangeWatchedFiles?.dynamicRegistration === true,
    changesFolders: workspace?.workspaceFolders === true,
    hoversMarkdown: textDocument?.hover?.contentFormat?.includes('markdown') === true,
    takesLinks: textDocument?.definition?.linkSupport === true,
    takesTrees: textDocument?.documentSymbol?.hierarchicalDocumentSymbolSupport === true,
    takesCodeActions: textDocument?.codeAction?.codeActionLiteralSupport !== undefined,
    takesVersionedEdits: workspace?.workspaceEdit?.documentChanges === true,
    readsFiles: options.readsFiles === true,
    listsFiles: options.listsFiles === true,
    goesToPlaces: options.goesToPlaces === true,
    folders: params.workspaceFolders?.map(({ uri }) => uri) ?? (single === undefined ? [] : [single]),
    settings: options.settings,
  };
}
