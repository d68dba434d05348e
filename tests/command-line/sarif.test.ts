import { createRequire } from 'node:module';
import Ajv from 'ajv';
import { describe, expect, it } from 'vitest';
import { terminal } from '../support/memory-host.ts';
import { pondPhonics, pondSequence } from '../support/pond-phonics.ts';

const require = createRequire(import.meta.url);

/** The schema of SARIF 2.1.0 as OASIS published it (RTM.5), from the package `@microsoft/jest-sarif`. */
const validate = new Ajv({ meta: false, schemaId: 'auto', unknownFormats: 'ignore', logger: false })
  .addMetaSchema(require('ajv/lib/refs/json-schema-draft-04.json'))
  .compile(require('@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json'));

const passing = '---\ntitle: The Net\nlesson: "2"\n---\nThe net sat.\n';
const short = '---\nlesson: "2"\n---\nThe night net.\nThe night sat.\n';

function sarif(files: Readonly<Record<string, string>>, ...given: readonly string[]) {
  const call = terminal({ 'sequence.yaml': pondSequence, ...files }, pondPhonics);
  const outcome = call('check', ...given, '--format', 'sarif');
  const log = JSON.parse(outcome.output);
  return { ...outcome, log, run: log.runs[0] };
}

describe('check --format sarif', () => {
  it.each([
    ['a passing story', { 'net.md': passing }, 0],
    ['a story that falls short', { 'night.md': short }, 1],
    ['a file that cannot be used', { 'gone.md': '---\nlesson: "99"\n---\nThe net.\n' }, 2],
    ['a sequence with a mistake', { 'sequence.yaml': `${pondSequence}more: 1\n`, 'net.md': passing }, 0],
    ['names with spaces and accents', { 'die Brücke/the net 1.md': short }, 1],
  ])('is valid by the schema: %s', (_, files: Readonly<Record<string, string>>, exitCode) => {
    const outcome = sarif(files, '.');
    expect(validate(outcome.log) ? [] : validate.errors).toEqual([]);
    expect(outcome.exitCode).toBe(exitCode);
  });

  it('would not be valid otherwise: the schema does look', () => {
    const { log } = sarif({ 'night.md': short }, '.');
    log.runs[0].results[0].level = 'grave';
    expect(validate(log)).toBe(false);
  });

  it('has every finding at its place, with its rule', () => {
    const { run } = sarif({ 'die Brücke/the net 1.md': short }, '.');
    expect(run.columnKind).toBe('utf16CodeUnits');
    expect(run.results[1]).toEqual({
      ruleId: 'untaught-spelling',
      ruleIndex: 0,
      level: 'warning',
      message: { text: '“night” needs igh as in light, which lesson 3 teaches.' },
      locations: [
        {
          physicalLocation: {
            artifactLocation: { uri: 'die%20Br%C3%BCcke/the%20net%201.md' },
            region: { startLine: 4, startColumn: 5, endLine: 4, endColumn: 10 },
          },
        },
      ],
    });
    expect(run.tool.driver.rules[0].id).toBe('untaught-spelling');
  });

  it('has problems of the sequence as results, and unusable files as notifications', () => {
    const { run } = sarif(
      {
        'sequence.yaml': `${pondSequence}more: 1\n`,
        'net.md': passing,
        'gone.md': '---\nlesson: "99"\n---\n',
      },
      '.',
    );
    expect(run.results[0]).toMatchObject({ ruleId: 'sequence-problem', level: 'warning' });
    expect(run.invocations[0]).toMatchObject({
      executionSuccessful: false,
      toolExecutionNotifications: [{ level: 'error', associatedRule: { id: 'front-matter-problem' } }],
    });
  });

  it('is stable, a result a line', () => {
    const once = sarif({ 'night.md': short, 'net.md': passing }, '.').output;
    expect(sarif({ 'net.md': passing, 'night.md': short }, '.').output).toBe(once);
    expect(once.split('\n').filter((line) => line.startsWith('{"ruleId"'))).toHaveLength(3);
  });
});

describe('limits of check', () => {
  const files = { 'sequence.yaml': pondSequence, 'net.md': passing, 'night.md': short };
  const check = (...given: readonly string[]) => terminal(files, pondPhonics)('check', '.', ...given);

  it.each([
    [[], 1, ''],
    [['--max-short', '1'], 0, ''],
    [['--max-short', '1', '--max-warnings', '3'], 0, ''],
    [['--max-short', '1', '--max-warnings', '2'], 1, '3 errors and warnings; --max-warnings allows 2.\n'],
    [
      ['--max-short', '1', '--max-not-taught', '1'],
      1,
      'night.md  2 not-taught words; --max-not-taught allows 1.\n',
    ],
    [['--max-short', '1', '--max-not-taught', '2'], 0, ''],
    [['--max-short', 'many'], 2, '--max-short  “many” is not a whole number.\n'],
  ])('%j ends with %i', (given, exitCode, errors) => {
    expect(check(...given)).toMatchObject({ exitCode, errors });
  });
});
