import type { Timers } from './host.ts';

/** Holds work back while messages still wait in the queue, and not a moment longer. */
export interface Gate {
  /** To be called at each message that arrives. */
  arrived(): void;
  /** Resolves once a whole turn of the event loop has brought no message. All who wait share the same moment. */
  quiet(): Promise<void>;
}

/**
 * A gate in place of a fixed delay: a single change is answered at once; when changes have piled up, they are all taken
 * in before the one answer. The queue hands over one message a turn, so that a turn without one means it is empty.
 */
export function createGate(timers: Timers): Gate {
  let arrivals = 0;
  let waiting: Promise<void> | undefined;
  return {
    arrived: () => {
      arrivals++;
    },
    quiet: () => {
      waiting ??= new Promise((resolve) => {
        const look = (seen: number): void => {
          timers.soon(() =>
            timers.soon(() => {
              if (seen !== arrivals) {
                look(arrivals);
                return;
              }
              waiting = undefined;
              resolve();
            }),
          );
        };
        look(arrivals);
      });
      return waiting;
    },
  };
}
