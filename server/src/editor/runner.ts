import { type CancellationToken, ErrorCodes, LSPErrorCodes, ResponseError } from 'vscode-languageserver';
import type { Shape } from './shapes.ts';

/** Writes a line to the client's log. */
export type Log = (line: string) => void;

/** Wraps everything the server does for the client, so that one fault costs one answer and nothing else. */
export interface Runner {
  /**
   * A handler of a request: parameters of another shape are refused; what fails is logged with `doing` and answered with
   * `harmless`; what is cancelled is said to be.
   */
  request<P, R>(
    doing: string,
    shape: Shape,
    harmless: R,
    run: (params: P, token: CancellationToken) => Promise<R> | R,
  ): (params: P, token: CancellationToken) => Promise<R | ResponseError<never>>;
  /** A handler of a notification, or a task of the server's own; parameters of another shape are logged and left. */
  task<P extends unknown[]>(
    doing: string,
    shape: Shape,
    run: (...params: P) => Promise<void> | void,
  ): (...params: P) => void;
  /** Writes a fault to the log. */
  report(doing: string, fault: unknown): void;
  /** From now on requests are answered, or, after the shutdown, refused. */
  readonly life: { state: 'not-initialized' | 'running' | 'shut-down' };
}

/** Makes the wrapper; the same fault in the same work is logged once. */
export function createRunner(log: Log): Runner {
  const logged = new Set<string>();
  const report = (doing: string, fault: unknown): void => {
    const text = fault instanceof Error ? (fault.stack ?? fault.message) : String(fault);
    const line = `Could not finish ${doing}: ${text}`;
    if (logged.has(line)) return;
    if (logged.size >= 100) logged.clear();
    logged.add(line);
    log(line);
  };
  const life: Runner['life'] = { state: 'not-initialized' };
  return {
    life,
    report,
    request: (doing, shape, harmless, run) => async (params, token) => {
      if (life.state !== 'running') return refused(life.state);
      if (!shape(params)) return unusable(doing);
      if (token.isCancellationRequested) return cancelled();
      try {
        const answer = await run(params, token);
        return token.isCancellationRequested ? cancelled() : answer;
      } catch (fault) {
        if (fault instanceof ResponseError) return new ResponseError<never>(fault.code, fault.message);
        report(doing, fault);
        return harmless;
      }
    },
    task:
      (doing, shape, run) =>
      (...params) => {
        if (!shape(params[0])) {
          report(doing, 'the client has sent something that cannot be used.');
          return;
        }
        try {
          const running = run(...params);
          if (running instanceof Promise) running.catch((fault: unknown) => report(doing, fault));
        } catch (fault) {
          report(doing, fault);
        }
      },
  };
}

function refused(state: 'not-initialized' | 'shut-down'): ResponseError<never> {
  return state === 'shut-down'
    ? new ResponseError<never>(ErrorCodes.InvalidRequest, 'The server has been shut down.')
    : new ResponseError<never>(ErrorCodes.ServerNotInitialized, 'The server waits for “initialize”.');
}

function unusable(doing: string): ResponseError<never> {
  return new ResponseError<never>(ErrorCodes.InvalidParams, `The parameters for ${doing} cannot be used.`);
}

function cancelled(): ResponseError<never> {
  return new ResponseError<never>(LSPErrorCodes.RequestCancelled, 'The request was cancelled.');
}
