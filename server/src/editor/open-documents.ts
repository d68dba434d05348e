import type { TextDocumentContentChangeEvent } from 'vscode-languageserver-textdocument';
import { editedSnapshot, type Snapshot, snapshotOf } from './documents.ts';
import { canonicalUri } from './uri.ts';

/** The documents the client has open, each as its latest snapshot. */
export interface OpenDocuments {
  /** By the address as the client writes it. */
  get(uri: string): Snapshot | undefined;
  /** By the canonical address. */
  at(canonical: string): Snapshot | undefined;
  /** All addresses, as the client writes them. */
  uris(): readonly string[];
  readonly size: number;
  open(uri: string, languageId: string, version: number, text: string): Snapshot;
  /** Nothing when the document is not open. */
  edit(
    uri: string,
    changes: readonly TextDocumentContentChangeEvent[],
    version: number,
  ): Snapshot | undefined;
  /** True when it was open. */
  close(uri: string): boolean;
}

/** An empty set of documents. */
export function createOpenDocuments(): OpenDocuments {
  const snapshots = new Map<string, Snapshot>();
  const uriOf = new Map<string, string>();
  const keep = (snapshot: Snapshot): Snapshot => {
    snapshots.set(snapshot.uri, snapshot);
    uriOf.set(canonicalUri(snapshot.uri), snapshot.uri);
    return snapshot;
  };
  return {
    get: (uri) => snapshots.get(uri),
    at: (canonical) => {
      const uri = uriOf.get(canonical);
      return uri === undefined ? undefined : snapshots.get(uri);
    },
    uris: () => [...snapshots.keys()],
    get size() {
      return snapshots.size;
    },
    open: (uri, languageId, version, text) => keep(snapshotOf(uri, languageId, version, text)),
    edit: (uri, changes, version) => {
      const before = snapshots.get(uri);
      return before === undefined ? undefined : keep(editedSnapshot(before, changes, version));
    },
    close: (uri) => {
      uriOf.delete(canonicalUri(uri));
      return snapshots.delete(uri);
    },
  };
}
