import { chainCommand } from './chain.ts';
import { checkCommand } from './check.ts';
import { type Command, type ExitCode, exitCodes } from './command.ts';
import { coverageCommand } from './coverage.ts';
import { fitCommand } from './fit.ts';
import { commandHelp, programHelp } from './help.ts';
import type { Host } from './host.ts';
import { printCommand } from './print.ts';
import { readCall } from './read-call.ts';
import { soundsCommand } from './sounds.ts';
import { wordsCommand } from './words.ts';

/** Every command, in the order of the help. A new one is a file in this folder and an entry here. */
export const commands: readonly Command[] = [
  checkCommand,
  soundsCommand,
  wordsCommand,
  chainCommand,
  fitCommand,
  coverageCommand,
  printCommand,
];

/** Runs the command line with the arguments that follow the program's name; gives the exit code. */
export function run(given: readonly string[], host: Host): ExitCode {
  const read = readCall(given, commands);
  switch (read.kind) {
    case 'help':
      host.writeOutput(read.command === undefined ? programHelp(commands) : commandHelp(read.command));
      return exitCodes.well;
    case 'version':
      host.writeOutput(`battledore ${host.version}\n`);
      return exitCodes.well;
    case 'mistake': {
      const about = read.command === undefined ? '' : ` ${read.command.name}`;
      host.writeError(`${read.message}\nSee battledore${about} --help.\n`);
      return exitCodes.unusable;
    }
    case 'call':
      return read.command.run(read.call, host);
  }
}
