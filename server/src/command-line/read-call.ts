import { parseArgs } from 'node:util';
import { nearestName } from '../text/nearest-name.ts';
import type { Call, Command, CommandOption } from './command.ts';

/** What the arguments come to: a call of a command, a wish for help or the version, or a mistake to explain. */
export type ReadCall =
  | { readonly kind: 'call'; readonly command: Command; readonly call: Call }
  | { readonly kind: 'help'; readonly command?: Command }
  | { readonly kind: 'version' }
  | { readonly kind: 'mistake'; readonly message: string; readonly command?: Command };

/** Reads the arguments that follow the program's name. `--` ends the options. */
export function readCall(given: readonly string[], commands: readonly Command[]): ReadCall {
  const [first, ...rest] = given;
  if (first === undefined) return { kind: 'mistake', message: 'Which command?' };
  if (isHelp(first)) return { kind: 'help' };
  if (first === '--version') return { kind: 'version' };
  const command = commands.find(({ name }) => name === first);
  if (command !== undefined) return readCommandCall(rest, command);
  const what = first.startsWith('-') ? 'option' : 'command';
  const known = what === 'option' ? ['--help', '--version'] : commands.map(({ name }) => name);
  return {
    kind: 'mistake',
    message: `There is no ${what} “${first}”.${suggestion(first, known)}`,
  };
}

function readCommandCall(given: readonly string[], command: Command): ReadCall {
  const mistake = (message: string): ReadCall => ({ kind: 'mistake', message, command });
  const { tokens } = parseArgs({
    args: [...given],
    options: Object.fromEntries(
      command.options.map(({ name, value }) => [name, { type: value === undefined ? 'boolean' : 'string' }]),
    ),
    strict: false,
    allowPositionals: true,
    tokens: true,
  });
  const operands: string[] = [];
  const options = new Map<string, string>();
  for (const token of tokens) {
    if (token.kind === 'positional') operands.push(token.value);
    if (token.kind !== 'option') continue;
    if (isHelp(token.rawName)) return { kind: 'help', command };
    const option = command.options.find(({ name }) => name === token.name);
    if (option === undefined) {
      const known = [...command.options.map(({ name }) => `--${name}`), '--help'];
      return mistake(`${command.name} has no option “${token.rawName}”.${suggestion(token.rawName, known)}`);
    }
    const trouble = valueTrouble(option, token);
    if (trouble !== undefined) return mistake(trouble);
    if (options.has(option.name)) return mistake(`--${option.name} is given twice.`);
    options.set(option.name, chosen(option, token.value ?? ''));
  }
  const trouble = operandTrouble(operands, command);
  if (trouble !== undefined) return mistake(trouble);
  const needed = command.options.find(({ name, isNeeded }) => isNeeded === true && !options.has(name));
  if (needed !== undefined) {
    return mistake(`${command.name} needs --${needed.name} ${needed.value ?? ''}.`);
  }
  return { kind: 'call', command, call: { operands, options } };
}

interface OptionToken {
  readonly value: string | undefined;
  readonly inlineValue: boolean | undefined;
}

function valueTrouble(option: CommandOption, { value, inlineValue }: OptionToken): string | undefined {
  if (option.value === undefined) {
    return value === undefined ? undefined : `--${option.name} takes no value.`;
  }
  const isNextOption = inlineValue === false && value?.startsWith('-') === true;
  if (value === undefined || value === '' || isNextOption) {
    return `--${option.name} needs a value: --${option.name} ${option.value}.`;
  }
  return option.choices?.includes(chosen(option, value)) === false
    ? choiceMistake(option, option.choices, value)
    : undefined;
}

/** A choice as it is known, whatever its capitals: `A4` is a4. */
function chosen({ choices }: CommandOption, value: string): string {
  return choices?.includes(value.toLowerCase()) ? value.toLowerCase() : value;
}

function operandTrouble(operands: readonly string[], command: Command): string | undefined {
  if (command.operands === '') {
    const first = operands[0];
    return first === undefined ? undefined : `${command.name} takes options only; “${first}” is none.`;
  }
  if (command.operands.endsWith('…')) {
    return operands.length > 0 ? undefined : `${command.name} needs at least one ${command.operands}.`;
  }
  return operands.length === 1 ? undefined : `${command.name} needs exactly one ${command.operands}.`;
}

function isHelp(argument: string): boolean {
  return argument === '--help' || argument === '-h';
}

function choiceMistake(option: CommandOption, choices: readonly string[], given: string): string {
  const known = `${choices.slice(0, -1).join(', ')} and ${choices.at(-1)}`;
  return `“${given}” is not a ${option.name.replaceAll('-', ' ')}; there is ${known}.${suggestion(given, choices)}`;
}

function suggestion(given: string, known: readonly string[]): string {
  const near = nearestName(given, known);
  return near === undefined ? '' : ` Did you mean “${near}”?`;
}
