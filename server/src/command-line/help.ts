import type { Command } from './command.ts';

/** The help of the whole program. */
export function programHelp(commands: readonly Command[]): string {
  return [
    'Battledore shows which words of a story beginning readers cannot read yet, and why.',
    '',
    'Usage: battledore COMMAND …',
    '',
    ...columns(commands.map(({ name, operands, summary }) => [`${name} ${operands}`.trimEnd(), summary])),
    '',
    ...columns([
      ['COMMAND --help', 'says more about a command'],
      ['--version', 'prints the version'],
    ]),
    '',
    'Exit code: 0 all well, 1 a story falls short, 2 the call or a file could not be used.',
    '',
  ].join('\n');
}

/** The help of one command. */
export function commandHelp({ name, operands, help, options }: Command): string {
  const rows = options.map(({ name: option, value, description, choices }): [string, string] => [
    `--${option} ${choices?.join('|') ?? value ?? ''}`.trimEnd(),
    description,
  ]);
  const needed = options
    .filter(({ isNeeded }) => isNeeded === true)
    .map(({ name: option, value }) => `--${option} ${value ?? ''}`);
  return [
    ['Usage: battledore', name, operands, ...needed, '[OPTIONS]'].filter((part) => part !== '').join(' '),
    '',
    help,
    '',
    ...columns([...rows, ['--help', 'prints this page']]),
    '',
  ].join('\n');
}

function columns(rows: readonly (readonly [string, string])[]): readonly string[] {
  const width = Math.max(...rows.map(([left]) => left.length)) + 2;
  return rows.map(([left, right]) => `  ${left.padEnd(width)}${right}`);
}
