import { expect, test } from 'vitest';
import manifest from '../../../package.json' with { type: 'json' };
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
    expect(property.markdownDescription).toMatch(/^[A-Z].*\.$/);
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
