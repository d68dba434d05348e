import type { Cancel, Timers } from './host.ts';

/** Where the writer is typing in each document, for as long as she is. */
export interface Typing {
  /** Takes notice of a change; `caret` is just past its text, where that is known. */
  typed(uri: string, caret: number | undefined): void;
  /** Where a word is being typed in a document; absent after a second without a change. */
  at(uri: string): number | undefined;
  /** Takes notice that a document is closed. */
  forget(uri: string): void;
  /** How many documents are being typed in. */
  readonly size: number;
}

/** Milliseconds without a change after which a word counts as finished. */
export const typingPause = 1000;

/** Watches the typing; `paused` is told of each document in which it has stopped. */
export function createTyping(timers: Timers, paused: (uri: string) => void): Typing {
  const places = new Map<string, { readonly caret: number; readonly cancel: Cancel }>();
  const forget = (uri: string): void => {
    places.get(uri)?.cancel();
    places.delete(uri);
  };
  return {
    typed: (uri, caret) => {
      forget(uri);
      if (caret === undefined) return;
      const cancel = timers.after(typingPause, () => {
        places.delete(uri);
        paused(uri);
      });
      places.set(uri, { caret, cancel });
    },
    at: (uri) => places.get(uri)?.caret,
    forget,
    get size() {
      return places.size;
    },
  };
}
