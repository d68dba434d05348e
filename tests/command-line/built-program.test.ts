import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

/** The program that ships, as the build leaves it: parts that only people and tests read are not in it. */
const program = fileURLToPath(new URL('../../server/dist/cli.js', import.meta.url));
const samples = fileURLToPath(new URL('../../samples', import.meta.url));

test.each([
  ['check', samples, '--format', 'text'],
  ['check', samples, '--format', 'json'],
  ['check', samples, '--format', 'sarif'],
  ['coverage', samples, '--format', 'text'],
  ['coverage', samples, '--format', 'json'],
  ['coverage', samples, '--format', 'csv'],
  ['coverage', samples, '--format', 'html'],
])('the built program writes what %s %s %s %s asks for', (...given) => {
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...given], { encoding: 'utf8' });
  expect([status === 2, stderr.includes('Battledore stopped'), stdout.length > 1000]).toEqual([
    false,
    false,
    true,
  ]);
});

test('the rules in SARIF have their pages', () => {
  const { stdout } = spawnSync(process.execPath, [program, 'check', samples, '--format', 'sarif'], {
    encoding: 'utf8',
  });
  const { rules } = JSON.parse(stdout).runs[0].tool.driver;
  expect(rules.length).toBeGreaterThan(10);
  for (const { fullDescription, help } of rules) {
    expect(fullDescription.text.length).toBeGreaterThan(40);
    expect(help.text.length).toBeGreaterThan(40);
  }
});
