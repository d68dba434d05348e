import type { Gate } from './gate.ts';

/** Works through the documents that have to be looked at again, one a turn, so that requests come in between. */
export interface FollowUp {
  /** Puts documents on the list; one that is on it stays where it is. */
  add(uris: Iterable<string>): void;
  /** Takes a document off the list. */
  drop(uri: string): void;
  /** True while documents are on the list. */
  readonly isBusy: boolean;
}

interface Work {
  /** Called with a document once the gate is quiet. */
  readonly look: (uri: string) => Promise<void>;
  /** Told of the faults of `look`; the list goes on. */
  readonly failed: (uri: string, fault: unknown) => void;
  /** Called when the list has become empty. */
  readonly rested: () => void;
}

/** Starts with an empty list. */
export function createFollowUp(gate: Gate, { look, failed, rested }: Work): FollowUp {
  const waiting = new Set<string>();
  let isRunning = false;
  const run = async (): Promise<void> => {
    isRunning = true;
    for (;;) {
      await gate.quiet();
      const next = waiting.values().next();
      if (next.done === true) break;
      waiting.delete(next.value);
      await look(next.value).catch((fault: unknown) => failed(next.value, fault));
    }
    isRunning = false;
    rested();
  };
  return {
    add: (uris) => {
      for (const uri of uris) waiting.add(uri);
      if (!isRunning && waiting.size > 0) void run();
    },
    drop: (uri) => {
      waiting.delete(uri);
    },
    get isBusy() {
      return waiting.size > 0;
    },
  };
}
