import type { Host } from './host.ts';

/** What a call ends with: all well, a story falls short, or the call or a file could not be used. */
export const exitCodes = { well: 0, fallsShort: 1, unusable: 2 } as const;
/** One of the exit codes. */
export type ExitCode = (typeof exitCodes)[keyof typeof exitCodes];

/** An option of a command. */
export interface CommandOption {
  /** Without the two hyphens. */
  readonly name: string;
  /** What the value is, for the help: `NAME`. An option without one is given or not. */
  readonly value?: string;
  /** True for an option that a call cannot do without. */
  readonly isNeeded?: boolean;
  readonly description: string;
  /** The only values there are, where they can be listed; the first is meant when the option is left out. */
  readonly choices?: readonly string[];
}

/** A call of a command, its options known and their choices checked. */
export interface Call {
  readonly operands: readonly string[];
  /** Values by option name; empty for an option that takes none. */
  readonly options: ReadonlyMap<string, string>;
}

/** A command of the command line. */
export interface Command {
  readonly name: string;
  /** One line for the list of commands. */
  readonly summary: string;
  /** What the operands are: `PATH…` for one or more, `FILE` for exactly one, empty for none. */
  readonly operands: string;
  /** What the command does, in plain lines of at most 80 characters. */
  readonly help: string;
  readonly options: readonly CommandOption[];
  readonly run: (call: Call, host: Host) => ExitCode;
}
