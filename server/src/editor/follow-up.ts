import type { Gate } from './gate.ts';

/** Works through the documents that have to be looked at again, one a turn, so that requests come in between. */
export interface FollowUp {
  /** Puts documents on the list; one that is on it stays where it is. */
  add(uris: Iterable<string>): void;
  /** Takes a document off the list. */
  drop(uri: string): void;
}

/** Starts with an empty list. `look` is called once the gate is quiet; its faults go to `failed`, and the list goes on. */
export function createFollowUp(
  gate: Gate,
  look: (uri: string) => Promise<void>,
  failed: (uri: string, fault: unknown) => void,
): FollowUp {
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
  };
  return {
    add: (uris) => {
      for (const uri of uris) waiting.add(uri);
      if (!isRunning && waiting.size > 0) void run();
    },
    drop: (uri) => {
      waiting.delete(uri);
    },
  };
}
