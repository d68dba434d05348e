import { describe, expect, test } from 'vitest';
import { collectedMessages } from '../../../.config/messages.ts';
import collected from '../../../client/l10n/bundle.l10n.json' with { type: 'json' };
import manifest from '../../../package.json' with { type: 'json' };
import titles from '../../../package.nls.json' with { type: 'json' };
import { defaultSettings, settingsSection } from '../../../server/src/editor/settings.ts';

const { contributes } = manifest;

test('the settings of the manifest are those of the server, with the same defaults', () => {
  const defaults = Object.entries(contributes.configuration.properties).map(([name, { default: value }]) => [
    name,
    value,
  ]);
  const expected = Object.entries(defaultSettings).map(([name, value]) => [
    `${settingsSection}.${name}`,
    value,
  ]);
  expect(Object.fromEntries(defaults)).toEqual(Object.fromEntries(expected));
});

test('every setting is described', () => {
  for (const property of Object.values(contributes.configuration.properties))
    expect(inEnglish(property.markdownDescription)).toMatch(/^[A-Z].*\.$/);
});

test('the extension runs where nothing is trusted and nothing is on disk', () => {
  expect(manifest.capabilities).toEqual({
    untrustedWorkspaces: { supported: true },
    virtualWorkspaces: true,
  });
});

test('every command of a menu is a command', () => {
  const commands = contributes.commands.map(({ command }) => command);
  for (const { command } of Object.values(contributes.menus).flat()) expect(commands).toContain(command);
});

/** What stands for a key of the manifest. */
function inEnglish(key: string): string | undefined {
  return Object.entries(titles).find(([name]) => key === `%${name}%`)?.[1];
}

/** Every text of a value. */
function textsOf(value: unknown): readonly string[] {
  if (typeof value === 'string') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(textsOf) : [];
}

describe('for translation', () => {
  test('the manifest has a key for every title and description, and each key has its text', () => {
    const keys = textsOf(manifest).filter((text) => /^%.*%$/.test(text));
    expect([...new Set(keys)].sort()).toEqual(
      Object.keys(titles)
        .map((name) => `%${name}%`)
        .sort(),
    );
    for (const { title } of contributes.commands) expect(inEnglish(title)).toMatch(/^[A-Z]/);
  });

  test('every message of the client is collected (npm run messages)', () => {
    expect(`${JSON.stringify(collected, null, 2)}\n`).toBe(collectedMessages());
    expect(manifest.l10n).toBe('./client/l10n');
  });
});

test('every button of the first steps is a command, or brings a view to the front', () => {
  const commands = new Set([
    ...contributes.commands.map(({ command }) => command),
    ...contributes.views.battledore.map(({ id }) => `${id}.focus`),
  ]);
  const [walkthrough] = contributes.walkthroughs;
  const buttons = walkthrough?.steps.map(({ description }) =>
    [...(inEnglish(description) ?? '').matchAll(/\(command:([^)]+)\)/g)].map(([, command]) => command),
  );
  expect(buttons?.every((own) => own.length > 0)).toBe(true);
  for (const command of buttons?.flat() ?? []) expect(commands).toContain(command);
});
