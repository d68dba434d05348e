import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { commands } from '../../server/src/command-line/run.ts';
import { terminal } from '../support/memory-host.ts';
import { pondPhonics, pondSequence } from '../support/pond-phonics.ts';

const call = terminal(
  { 'sequence.yaml': pondSequence, 'a.md': '---\nlesson: "1"\n---\nThe map.\n' },
  pondPhonics,
);

describe('calls that cannot be meant', () => {
  it.each([
    [[], 'Which command?'],
    [['chek', 'a.md'], 'There is no command “chek”. Did you mean “check”?'],
    [['frobnicate'], 'There is no command “frobnicate”.\n'],
    [['--versoin'], 'There is no option “--versoin”. Did you mean “--version”?'],
    [['check'], 'check needs at least one PATH…'],
    [['check', 'a.md', '--lessen', '1'], 'check has no option “--lessen”. Did you mean “--lesson”?'],
    [['check', 'a.md', '-q'], 'check has no option “-q”.'],
    [['check', 'a.md', '--lesson'], '--lesson needs a value: --lesson NAME.'],
    [['check', '--lesson', '--format', 'json', 'a.md'], '--lesson needs a value: --lesson NAME.'],
    [['check', 'a.md', '--lesson='], '--lesson needs a value: --lesson NAME.'],
    [['check', 'a.md', '--format', 'xml'], '“xml” is not a format; there is text, json and sarif.'],
    [['check', 'a.md', '--format', 'json', '--format', 'text'], '--format is given twice.'],
    [['sounds'], 'sounds needs at least one WORD…'],
    [['sounds', ''], 'There is no word in “”.'],
    [['sounds', '123'], '“123” is written in digits, which say no sounds; write it in letters.'],
    [['sounds', '3rd'], '“3rd” is written in digits'],
    [['sounds', '&'], '“&” has no letters that English gives a sound to.'],
  ])('%j', (given, message) => {
    const outcome = call(...given);
    expect(outcome.errors).toContain(message);
    expect(outcome).toMatchObject({ exitCode: 2, output: '' });
  });
});

describe('the README', () => {
  const readme = readFileSync(new URL('../../README.md', import.meta.url), 'utf8');

  it.each(commands.map((command) => [command.name, command] as const))(
    'names %s with all its options and no others',
    (name, { options, operands }) => {
      const [row = '', ...more] = readme.split('\n').filter((line) => line.startsWith(`| \`${name} `));
      expect(more).toEqual([]);
      if (operands !== '') expect(row).toContain(`\`${name} ${operands}\``);
      const named = [...(row.split(' | ')[2] ?? '').matchAll(/`--([a-z-]+)/g)].map(([, option]) => option);
      expect(named.sort()).toEqual(options.map((option) => option.name).sort());
    },
  );

  it('shows calls of commands that there are, with options that they have', () => {
    const calls = [...readme.matchAll(/^npx battledore ([a-z]+)(.*)$/gm)];
    expect(calls.length).toBeGreaterThan(5);
    for (const [, name, rest = ''] of calls) {
      const command = commands.find((each) => each.name === name);
      const known = command?.options.map((option) => option.name);
      for (const [, option] of rest.matchAll(/--([a-z-]+)/g)) expect(known).toContain(option);
      expect(command).toBeDefined();
    }
  });
});

describe('help and version', () => {
  it('says of check and sounds what their JSON holds', () => {
    for (const given of [
      ['check', 'a.md'],
      ['sounds', 'map'],
    ]) {
      const help = call(given[0] ?? '', '--help').output;
      const json = call(...given, '--format', 'json').output;
      const keys = [...json.matchAll(/"([A-Za-z-]+)":/g)].map(([, key]) => key);
      expect(keys.length).toBeGreaterThan(5);
      for (const key of keys) expect(help).toContain(`"${key}":`);
    }
  });

  it('lists every command', () => {
    const { exitCode, output } = call('--help');
    expect(exitCode).toBe(0);
    for (const { name, summary } of commands)
      expect(output).toMatch(new RegExp(`^ {2}${name} .*${summary}$`, 'm'));
  });

  it.each(commands.map((command) => [command.name, command] as const))(
    'explains every option of %s',
    (name, command) => {
      for (const given of [
        [name, '--help'],
        [name, '-h'],
        [name, 'a.md', '--help'],
      ]) {
        const { exitCode, output } = call(...given);
        expect(exitCode).toBe(0);
        for (const option of command.options) expect(output).toContain(`--${option.name} `);
      }
    },
  );

  it('prints the version', () => {
    expect(call('--version')).toEqual({ exitCode: 0, output: 'battledore 0.0.0\n', errors: '' });
  });

  it('reads what follows -- as a path', () => {
    expect(call('check', '--', '--help').errors).toContain('--help  There is no such file or folder.');
  });
});
