import type { Connection } from 'vscode-languageserver';
import { sequenceFindings } from '../review/findings.ts';
import { diagnosticOf } from './diagnostics.ts';
import type { SequenceFile } from './sequence-files.ts';
import { canonicalUri } from './uri.ts';

/**
 * Puts the problems of sequences that open stories follow, and that are not open themselves, into the client's list.
 * Clients that pull are told the same way, since they pull for open documents only.
 */
export interface ClosedSequences {
  /** Notes which sequence an open story follows now; none when it is closed or has none. */
  follows(story: string, file: SequenceFile | undefined): void;
  /** A sequence (canonical address) was opened: its problems come the usual way from now on. */
  opened(uri: string): void;
  readonly size: number;
}

/** More problems than this are not sent of a file that is not open; opening it shows all. */
const mostShown = 100;

/** Shows nothing at first. `isOpen` takes a canonical address. */
export function createClosedSequences(
  connection: Connection,
  isOpen: (canonical: string) => boolean,
): ClosedSequences {
  const followed = new Map<string, SequenceFile>();
  /** What the client's list was made from, by canonical address. */
  const sent = new Map<string, SequenceFile>();

  const show = (uri: string): void => {
    const file = [...followed.values()].find(({ snapshot }) => canonicalUri(snapshot.uri) === uri);
    if (file === undefined || file.teaching.problems.length === 0 || isOpen(uri)) {
      if (sent.delete(uri)) void connection.sendDiagnostics({ uri, diagnostics: [] });
    } else if (sent.get(uri) !== file) {
      sent.set(uri, file);
      const shown = sequenceFindings(file.teaching.problems.slice(0, mostShown));
      const diagnostics = shown.map((found) => diagnosticOf(file.snapshot, found));
      void connection.sendDiagnostics({ uri, diagnostics });
    }
  };

  return {
    follows: (story, file) => {
      const before = followed.get(story);
      if (file === undefined) followed.delete(story);
      else followed.set(story, file);
      const concerned = [before, file].flatMap((each) => (each ? [canonicalUri(each.snapshot.uri)] : []));
      for (const uri of new Set(concerned)) show(uri);
    },
    opened: show,
    get size() {
      return followed.size + sent.size;
    },
  };
}
